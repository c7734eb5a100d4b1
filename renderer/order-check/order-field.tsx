import { type RefObject, useRef, useState } from 'react'
import { KeyHint } from '../components/key-hint.tsx'
import { isChangedSince, pastedName } from './draft-order.ts'
import type { OrderCheck } from './use-order-check.ts'

interface OrderFieldProps {
  readonly order: OrderCheck
  readonly field: RefObject<HTMLTextAreaElement | null>
  readonly picker: RefObject<HTMLInputElement | null>
}

/** The order itself: pasted, typed or opened from a file, and who is to be sent it. */
export function OrderField({ order: { draft, step, suppliers }, field, picker }: OrderFieldProps) {
  const [fault, setFault] = useState('')
  const isPasting = useRef(false)
  const open = async (file: File) => {
    const text = await readUtf8(file)
    setFault(
      text === undefined ? `${file.name} is not UTF-8 text. Save it as CSV (UTF-8), then open it.` : '',
    )
    if (text !== undefined) step({ do: 'take', text, name: file.name })
    field.current?.focus()
  }
  return (
    <section className="draft" aria-label="Draft order">
      <label className="draft__name" htmlFor="draft-order">
        Order lines
      </label>
      <p className="quiet" id="draft-order-help">
        Paste rows from a spreadsheet, or open a CSV: part number and quantity, or columns named part_number,
        quantity, brand, model_number, made, serial.
      </p>
      <textarea
        ref={field}
        id="draft-order"
        className="draft__text number"
        aria-describedby="draft-order-help"
        spellCheck={false}
        autoComplete="off"
        wrap="off"
        value={draft.text}
        onPaste={() => {
          isPasting.current = true
        }}
        onChange={event => {
          const text = event.target.value
          step(isPasting.current ? { do: 'take', text, name: pastedName } : { do: 'type', text })
          isPasting.current = false
        }}
      />
      <p className="draft__changed" role="status">
        {isChangedSince(draft) ? 'Changed since it was checked. F9 checks it again.' : ''}
      </p>
      {fault !== '' && (
        <p className="problem-note" role="alert">
          {fault}
        </p>
      )}
      <label className="draft__name" htmlFor="draft-supplier">
        Supplier
      </label>
      <select
        id="draft-supplier"
        className="text-field"
        value={draft.supplier}
        onChange={event => step({ do: 'choose-supplier', supplier: event.target.value })}
      >
        <option value="">Any supplier</option>
        {suppliers.map(({ supplier, name }) => (
          <option key={supplier} value={supplier}>
            {name} ({supplier})
          </option>
        ))}
      </select>
      <div className="draft__actions">
        <button
          type="button"
          className="order-button order-button--main"
          aria-keyshortcuts="F9"
          onClick={() => step({ do: 'check' })}
        >
          Check <KeyHint>F9</KeyHint>
        </button>
        <button
          type="button"
          className="order-button"
          aria-keyshortcuts="F6"
          onClick={() => picker.current?.click()}
        >
          Open a CSV <KeyHint>F6</KeyHint>
        </button>
        <input
          ref={picker}
          type="file"
          className="unseen"
          tabIndex={-1}
          aria-label="CSV file of the order"
          accept=".csv,.tsv,.txt,text/csv,text/plain"
          onChange={event => {
            const [file] = event.target.files ?? []
            event.target.value = ''
            if (file !== undefined) void open(file)
          }}
        />
      </div>
    </section>
  )
}

async function readUtf8(file: File): Promise<string | undefined> {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer())
  } catch {
    return undefined
  }
}
