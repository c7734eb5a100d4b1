import { useState } from 'react'
import type { WeighedCause, WeighedFaults } from '../../shared-schemas/fault-finding.ts'
import { endWords, wordArithmetic, wordLikelihood, wordShare } from '../../shared-schemas/word-faults.ts'

/** Every cause with its share in words, in figures and as a bar; opened, the arithmetic behind it. */
export function CauseBars({ weighed }: { readonly weighed: WeighedFaults }) {
  const [open, setOpen] = useState<string | null>(null)
  return (
    <section aria-labelledby="causes">
      <h2 id="causes" className="stock-heading">
        What it may be
      </h2>
      <ul className="causes">
        {weighed.causes.map(cause => (
          <CauseRow
            key={cause.cause}
            cause={cause}
            isOpen={open === cause.cause}
            onToggle={() => setOpen(open === cause.cause ? null : cause.cause)}
          />
        ))}
      </ul>
    </section>
  )
}

interface CauseRowProps {
  readonly cause: WeighedCause
  readonly isOpen: boolean
  readonly onToggle: () => void
}

function CauseRow({ cause: { cause, endsIn, probability, arithmetic }, isOpen, onToggle }: CauseRowProps) {
  return (
    <li className="cause" data-cause={cause}>
      <button type="button" className="cause__line" aria-expanded={isOpen} onClick={onToggle}>
        <span className="cause__name">{cause}</span>
        <span className="quiet">{endWords[endsIn]}</span>
        <span className="cause__word">{wordLikelihood(probability)}</span>
        <span className="cause__share">{wordShare(probability)}</span>
        <span className="cause__track" aria-hidden="true">
          <span className="cause__bar" style={{ transform: `scaleX(${probability})` }} />
        </span>
      </button>
      {isOpen && (
        <ol className="reasons cause__why">
          {wordArithmetic(arithmetic, probability).map(line => (
            <li key={line} className="reasons__step">
              {line}
            </li>
          ))}
        </ol>
      )}
    </li>
  )
}
