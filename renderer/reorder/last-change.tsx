import type { PartChanges } from './use-part-changes.ts'

/** What was last said of a part, with the way back; or why it was not kept. */
export function LastChange({ changes }: { readonly changes: PartChanges }) {
  const { last, problem, isBusy, takeBack } = changes
  return (
    <>
      <p role="status">
        {last?.words}{' '}
        {last !== null && (
          <button type="button" className="plain-button" disabled={isBusy} onClick={takeBack}>
            Take it back
          </button>
        )}
      </p>
      {problem !== null && (
        <p className="problem-note" role="alert">
          {problem.message} Nothing was changed.
        </p>
      )}
    </>
  )
}
