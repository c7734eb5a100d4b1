/** What went wrong, what was kept, and the next step. */
export function ProblemNote({
  problem,
  kept,
  onRetry,
}: {
  readonly problem: Error
  readonly kept: string
  readonly onRetry: () => void
}) {
  return (
    <div className="problem-note" role="alert">
      <p className="problem-note__what">{problem.message}</p>
      <p>{kept}</p>
      <button type="button" className="plain-button" onClick={onRetry}>
        Ask again
      </button>
    </div>
  )
}
