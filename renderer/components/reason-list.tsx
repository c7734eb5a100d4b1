import type { Reason } from '../../shared-schemas/fit-check.ts'

/** The reasoning, step by step, each with where it rests. */
export function ReasonList({ reasons }: { readonly reasons: readonly Reason[] }) {
  return (
    <ol className="reasons">
      {reasons.map(({ code, text, source }) => (
        <li key={`${code} ${text} ${source}`} className="reasons__step">
          {text} {source !== null && <cite className="reasons__source">{source}</cite>}
        </li>
      ))}
    </ol>
  )
}
