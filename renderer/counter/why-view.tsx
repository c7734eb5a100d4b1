import { type RefObject, useEffect, useRef } from 'react'
import { createPortal } from 'react-dom'
import type { FitAnswer } from '../../shared-schemas/fit-check.ts'
import { wordWhy } from '../../shared-schemas/word-why.ts'
import { KeyHint } from '../components/key-hint.tsx'

/** The whole reasoning of a verdict on a sheet of its own: F9 opens it, Esc closes it, and it prints alone. */
export function WhyView({ answer }: { readonly answer: FitAnswer }) {
  const sheet = useRef<HTMLDialogElement>(null)
  useSheetKeys(sheet)
  const [verdict, ...steps] = wordWhy(answer)
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
      {createPortal(
        <dialog ref={sheet} className="why-view" aria-labelledby="why-view-title">
          <h2 id="why-view-title" className="why-view__verdict">
            {verdict}
          </h2>
          <p className="why-view__steps">{steps.join('\n')}</p>
          <p className="why-view__acts">
            <button type="button" className="plain-button" onClick={() => window.print()}>
              Print
            </button>
            <button type="button" className="plain-button" onClick={() => sheet.current?.close()}>
              Close <KeyHint>Esc</KeyHint>
            </button>
          </p>
        </dialog>,
        // At the body, so that a print can leave out everything else.
        document.body,
      )}
    </>
  )
}

/** Esc is caught before the Counter sees it, which would go back to the plate; printing may have taken the focus away. */
function useSheetKeys(sheet: RefObject<HTMLDialogElement | null>): void {
  useEffect(() => {
    const act = (event: KeyboardEvent) => {
      if (event.isComposing || event.altKey || event.ctrlKey || event.metaKey) return
      const isOpen = sheet.current?.open === true
      // While the sheet is open, no key of the screens behind it acts.
      if (isOpen) event.stopPropagation()
      if (event.key === 'F9' && !isOpen) sheet.current?.showModal()
      else if (event.key === 'Escape' && isOpen) sheet.current?.close()
      else return
      event.preventDefault()
    }
    document.addEventListener('keydown', act, { capture: true })
    return () => document.removeEventListener('keydown', act, { capture: true })
  }, [sheet])
}
