import type { AskedReading, Reason } from '../../shared-schemas/fit-check.ts'
import { ReasonList } from './reason-list.tsx'

interface AskedAndNeededProps {
  readonly ask: readonly AskedReading[]
  readonly alsoNeeds: readonly string[]
  readonly reasons: readonly Reason[]
}

/** What would decide a verdict, what must be bought besides, and what it rests on. */
export function AskedAndNeeded({ ask, alsoNeeds, reasons }: AskedAndNeededProps) {
  return (
    <>
      {ask.map(({ text }) => (
        <p key={text} className="asked-sentence">
          {text}
        </p>
      ))}
      {alsoNeeds.length > 0 && (
        <p>
          <strong>Also needed:</strong> <span className="number">{alsoNeeds.join(', ')}</span>
        </p>
      )}
      <ReasonList reasons={reasons} />
    </>
  )
}
