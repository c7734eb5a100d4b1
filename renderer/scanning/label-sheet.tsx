import { useEffect, useRef, useState } from 'react'
import { createPortal } from 'react-dom'
import { KeyHint } from '../components/key-hint.tsx'
import { CodeBars } from './code-bars.tsx'

/** One label: what a person reads, and what a scanner reads. */
export interface Label {
  readonly title: string
  readonly detail: string
  readonly code: string
}

interface LabelSheetProps {
  /** What the button says that opens the sheet. */
  readonly name: string
  readonly labels: readonly Label[]
}

/** Labels to print and stick on: each with its code, the same as text, and what it is. */
export function LabelSheet({ name, labels }: LabelSheetProps) {
  const [isOpen, setOpen] = useState(false)
  return (
    <>
      <button type="button" className="plain-button" onClick={() => setOpen(true)}>
        {name}
      </button>
      {isOpen && createPortal(<Sheet labels={labels} onClose={() => setOpen(false)} />, document.body)}
    </>
  )
}

function Sheet({ labels, onClose }: { readonly labels: readonly Label[]; readonly onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => dialog.current?.showModal(), [])
  return (
    // Keys struck in the dialog are its own, not those of the screen behind it.
    <dialog
      ref={dialog}
      className="why-view label-sheet"
      aria-label="Labels"
      onClose={onClose}
      onKeyDown={event => {
        event.stopPropagation()
        if (event.key !== 'F8') return
        event.preventDefault()
        window.print()
      }}
    >
      <p className="why-view__acts stock-acts">
        <button
          type="button"
          className="order-button order-button--main"
          aria-keyshortcuts="F8"
          onClick={() => window.print()}
        >
          Print <KeyHint>F8</KeyHint>
        </button>
        <button type="button" className="order-button" onClick={() => dialog.current?.close()}>
          Close <KeyHint>Esc</KeyHint>
        </button>
      </p>
      <ul className="label-sheet__labels">
        {labels.map(({ title, detail, code }) => (
          <li key={code} className="label">
            <p className="label__title number">{title}</p>
            <CodeBars code={code} />
            <p className="label__detail">{detail}</p>
          </li>
        ))}
      </ul>
    </dialog>
  )
}
