import { type ReactNode, type RefObject, useId } from 'react'
import { createPortal } from 'react-dom'
import { KeyHint } from '../components/key-hint.tsx'

interface SheetProps {
  readonly sheet: RefObject<HTMLDialogElement | null>
  readonly title: ReactNode
  readonly children: ReactNode
  /** Not where only a part of it is drawn. */
  readonly isPrinted?: boolean
  readonly onToggle?: (isOpen: boolean) => void
}

/** A sheet beside the plate; one that is printed prints alone. */
export function Sheet({ sheet, title, children, isPrinted = true, onToggle }: SheetProps) {
  const titleId = useId()
  return createPortal(
    // It keeps keys that are pressed on it from the screens behind it.
    <dialog
      ref={sheet}
      onKeyDown={event => event.stopPropagation()}
      className="why-view"
      aria-labelledby={titleId}
      onToggle={event => onToggle?.(event.newState === 'open')}
    >
      <h2 id={titleId} className="why-view__verdict">
        {title}
      </h2>
      {children}
      <p className="why-view__acts">
        {isPrinted && (
          <button type="button" className="plain-button" onClick={() => window.print()}>
            Print
          </button>
        )}
        <button type="button" className="plain-button" onClick={() => sheet.current?.close()}>
          Close <KeyHint>Esc</KeyHint>
        </button>
      </p>
    </dialog>,
    // At the body, so that a print can leave out everything else.
    document.body,
  )
}
