import type { FitAnswer } from '../../shared-schemas/fit-check.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { isRowSelected } from './row-why.tsx'
import { useSheet } from './use-sheet.ts'
import { WhySheet } from './why-sheet.tsx'

/** The whole reasoning of the part in the hand: F9 opens it, unless a row of the list is selected, and Esc closes it. */
export function WhyView({ answer }: { readonly answer: FitAnswer }) {
  const sheet = useSheet('F9', isRowSelected)
  return (
    <>
      <button
        type="button"
        className="plain-button"
        aria-keyshortcuts="F9"
        aria-haspopup="dialog"
        onClick={() => sheet.current?.showModal()}
      >
        Whole reasoning <KeyHint>F9</KeyHint>
      </button>
      <WhySheet sheet={sheet} answer={answer} />
    </>
  )
}
