import type { RefObject } from 'react'
import type { FitAnswer } from '../../shared-schemas/fit-check.ts'
import { wordWhy } from '../../shared-schemas/word-why.ts'
import { Sheet } from './sheet.tsx'

interface WhySheetProps {
  readonly sheet: RefObject<HTMLDialogElement | null>
  readonly answer: FitAnswer
  readonly onClose?: () => void
}

/** The whole reasoning of a verdict, on a sheet beside the plate. */
export function WhySheet({ sheet, answer, onClose }: WhySheetProps) {
  const [verdict, ...steps] = wordWhy(answer)
  return (
    <Sheet sheet={sheet} title={verdict ?? ''} onToggle={isOpen => !isOpen && onClose?.()}>
      <p className="why-view__steps">{steps.join('\n')}</p>
    </Sheet>
  )
}
