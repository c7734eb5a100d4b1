import { KeyHint } from '../components/key-hint.tsx'
import type { ListRun } from './use-list-run.ts'

interface ListOptionsProps {
  readonly run: ListRun
  readonly isEdition: boolean
  readonly onEdition: (isEdition: boolean) => void
  /** Whether it is loaded only when no row is rejected. */
  readonly isStrict: boolean
  readonly onStrict: (isStrict: boolean) => void
  readonly initials: string
  readonly onInitials: (initials: string) => void
  readonly missing: string | undefined
  readonly onTry: () => void
  readonly onLoad: () => void
  readonly onShowLoads: () => void
}

/** How the list is taken, who takes it, and the two steps: a dry run, then the load. */
export function ListOptions(props: ListOptionsProps) {
  const {
    run,
    isEdition,
    onEdition,
    isStrict,
    onStrict,
    initials,
    onInitials,
    missing,
    onTry,
    onLoad,
    onShowLoads,
  } = props
  return (
    <>
      <label className="lists__switch">
        <input
          type="checkbox"
          checked={isEdition}
          aria-describedby="edition-help"
          onChange={event => onEdition(event.target.checked)}
        />
        This is the whole new edition
      </label>
      <p className="quiet" id="edition-help">
        {isEdition
          ? 'What these suppliers’ offers, these sources’ fitments, these kits and what goes with these parts no longer say is retired: not used any more, kept in the history. What other sources say stays. A file with a rejected row retires nothing.'
          : 'Rows are added and changed; what the list no longer says stays as it is.'}
      </p>
      <label className="lists__switch">
        <input
          type="checkbox"
          checked={isStrict}
          aria-describedby="strict-help"
          onChange={event => onStrict(event.target.checked)}
        />
        Only if every row is sound
      </label>
      <p className="quiet" id="strict-help">
        {isStrict
          ? 'One rejected row, and nothing is loaded.'
          : 'Sound rows are loaded; rejected ones are named, to be mended and loaded later.'}
      </p>
      <div className="draft__actions">
        <button
          type="button"
          className="order-button order-button--main"
          aria-keyshortcuts="F9"
          onClick={onTry}
        >
          Dry run <KeyHint>F9</KeyHint>
        </button>
        <button type="button" className="order-button" aria-keyshortcuts="F2" onClick={onShowLoads}>
          Loads so far <KeyHint>F2</KeyHint>
        </button>
      </div>
      <div className="lists__sign">
        <label className="draft__name" htmlFor="list-initials">
          Initials
        </label>
        <input
          id="list-initials"
          className="text-field let-pass__initials"
          maxLength={6}
          autoComplete="off"
          value={initials}
          onChange={event => onInitials(event.target.value)}
        />
        <button
          type="button"
          className={run.isTriedAsItStands ? 'order-button order-button--main' : 'order-button'}
          aria-keyshortcuts="F10"
          onClick={onLoad}
        >
          Load it <KeyHint>F10</KeyHint>
        </button>
      </div>
      {missing !== undefined && (
        <p className="problem-note" role="alert">
          {missing}
        </p>
      )}
    </>
  )
}
