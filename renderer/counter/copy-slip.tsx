import { useEffect, useRef } from 'react'
import { KeyHint } from '../components/key-hint.tsx'
import { type Slip, wordSlip } from './slip-text.ts'
import type { CopyOutcome } from './use-copy-slip.ts'

interface CopySlipProps {
  readonly slip: Slip | null
  readonly outcome: CopyOutcome
  readonly onCopy: () => void
}

/** The slip as it would be copied, to read out or to send, and what came of copying it. */
export function CopySlip({ slip, outcome, onCopy }: CopySlipProps) {
  const confirmation = useRef<HTMLParagraphElement>(null)
  // The key acts from anywhere, also from where the slip is out of sight.
  useEffect(() => {
    if (outcome !== 'none') confirmation.current?.scrollIntoView({ block: 'nearest' })
  }, [outcome])
  return (
    <section className="slip" aria-label="Slip for the customer">
      <button type="button" className="slip__button" aria-keyshortcuts="F8" onClick={onCopy}>
        Copy slip <KeyHint>F8</KeyHint>
      </button>
      <p className="slip__outcome" role="status" ref={confirmation}>
        {outcomeWords[outcome]}
      </p>
      {slip !== null && <p className="slip__paper">{wordSlip(slip)}</p>}
    </section>
  )
}

const outcomeWords: Readonly<Record<CopyOutcome, string>> = {
  none: '',
  copied: 'Copied. It is on the clipboard.',
  'nothing-to-copy': 'Nothing to copy yet: open a family, or type a part number.',
  refused: 'The clipboard was refused. Select the text below and copy it.',
}
