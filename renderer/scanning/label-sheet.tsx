import { useEffect, useRef, useState } from 'react'
import { createPortal } from 'react-dom'
import { KeyHint } from '../components/key-hint.tsx'
import { encodeCode128 } from './code-128.ts'

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
            <Bars code={code} />
            <p className="label__detail">{detail}</p>
          </li>
        ))}
      </ul>
    </dialog>
  )
}

/** The code in bars. A text that Code 128 cannot say is on the label as text alone. */
function Bars({ code }: { readonly code: string }) {
  const widths = encodeCode128(code)
  if (widths === undefined) return <p>No code can be printed of {code}.</p>
  const modules = widths.reduce((sum, width) => sum + width, 0) + 2 * quietModules
  return (
    <svg
      className="label__bars"
      role="img"
      aria-label={`Code ${code}`}
      viewBox={`0 0 ${modules} 40`}
      width={`${(modules * moduleMillimetres).toFixed(2)}mm`}
      height="13mm"
      preserveAspectRatio="none"
      shapeRendering="crispEdges"
    >
      <path d={drawBars(widths)} />
    </svg>
  )
}

/** Clear space before and after the bars, and the width of the narrowest: what common scanners read (common practice). */
const quietModules = 10
const moduleMillimetres = 0.33

function drawBars(widths: readonly number[]): string {
  let at = quietModules
  return widths
    .map((width, index) => {
      const bar = index % 2 === 0 ? `M${at} 0h${width}v40h${-width}z` : ''
      at += width
      return bar
    })
    .join('')
}
