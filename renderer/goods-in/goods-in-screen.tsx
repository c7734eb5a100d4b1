import { useMutation } from '@tanstack/react-query'
import { type FormEvent, useEffect, useState } from 'react'
import { KeyHint } from '../components/key-hint.tsx'
import { ScrollRegion } from '../components/scroll-region.tsx'
import { type NamedScreen, TopLine } from '../components/top-line.tsx'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import { ScanLine } from '../scanning/scan-line.tsx'
import { useScanned } from '../scanning/use-scanned.ts'
import { ReceiveSheet } from './receive-sheet.tsx'
import { type GoodsIn, useGoodsIn } from './use-goods-in.ts'

/** Deliveries: the sheets that are awaited, and one of them received against by scanning and typing. */
export function GoodsInScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const goods = useGoodsIn()
  const book = useMutation({ mutationFn: goods.book, networkMode: 'always' })
  const { note, take, undo, forget } = useScanned({
    onCode: code => {
      const number = /^(?:\][A-Z]\d)?(\d{4}-\d{4,})$/i.exec(code.trim())?.[1]
      return number === undefined ? undefined : goods.open(number)
    },
    onPart: goods.count,
    onLocation: ({ location, name }) => {
      goods.setTo(location)
      return `It goes into ${name}.`
    },
    onUndo: goods.takeBack,
  })
  useScreenKeys({
    Escape: () => {
      forget()
      focusField('#goods-number')
    },
    F2: () => focusField('.goods-count'),
    F7: () => goods.setCondition(goods.condition === 'good' ? 'damaged' : 'good'),
    F9: () => {
      if (goods.number !== null && !book.isPending) book.mutate()
    },
    F10: undo,
  })
  useEffect(() => focusField('#goods-number'), [])
  return (
    <div className="counter">
      <TopLine
        screens={screens}
        shop={goods.locations.find(({ kind }) => kind === 'shop')?.name ?? 'Tallyplate'}
      />
      <main className="stock-bench stock-bench--two goods-bench">
        <h1 className="unseen">Goods-in</h1>
        <div className="stock-side">
          <OpenSheet goods={goods} />
          <ScanLine note={note} onAttached={take} />
        </div>
        {goods.opened.data === undefined ? (
          <section className="order-card__empty" aria-label="Goods-in">
            <h2 className="stock-sentence">Scan the order number, or choose the sheet that was delivered.</h2>
            <p>
              Then scan the parts, or type how many came of each line. What is short stays on order; damaged
              pieces go into quarantine and stay due until somebody closes them.
            </p>
          </section>
        ) : (
          <ReceiveSheet goods={goods} opened={goods.opened.data} book={book} onUndo={undo} />
        )}
        <div className="stock-side">
          <Awaited goods={goods} />
        </div>
      </main>
    </div>
  )
}

function OpenSheet({ goods }: { readonly goods: GoodsIn }) {
  const [typed, setTyped] = useState('')
  const open = useMutation({ mutationFn: goods.open, networkMode: 'always' })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (typed.trim() !== '' && !open.isPending) open.mutate(typed)
  }
  return (
    <form onSubmit={onSubmit} aria-label="Open an order sheet">
      <label htmlFor="goods-number" className="draft__name">
        Order number
      </label>
      <input
        id="goods-number"
        className="text-field number"
        autoComplete="off"
        spellCheck={false}
        maxLength={40}
        placeholder="2026-0007, or scan it"
        value={typed}
        onChange={event => setTyped(event.target.value)}
      />
      <button type="submit" className="unseen">
        Open
      </button>
      {open.error !== null && (
        <p className="problem-note" role="alert">
          {open.error.message}
        </p>
      )}
    </form>
  )
}

/** What suppliers still owe, sheet by sheet. */
function Awaited({ goods }: { readonly goods: GoodsIn }) {
  const sheets = goods.awaited.data?.sheets ?? []
  const open = useMutation({ mutationFn: goods.open, networkMode: 'always' })
  return (
    <section aria-labelledby="awaited">
      <h2 id="awaited" className="stock-heading">
        Awaited
      </h2>
      {goods.awaited.error !== null && (
        <p className="problem-note" role="alert">
          {goods.awaited.error.message}
        </p>
      )}
      {goods.awaited.data !== undefined && sheets.length === 0 && (
        <p className="quiet">Nothing is on order. Sheets are sent from Reorder (Alt+R).</p>
      )}
      {sheets.length > 0 && (
        <ScrollRegion label="Awaited sheets">
          <table className="stock-table">
            <thead>
              <tr>
                <th scope="col">Number</th>
                <th scope="col">From</th>
                <th scope="col">Sent</th>
                <th scope="col" className="stock-figure">
                  To come
                </th>
              </tr>
            </thead>
            <tbody>
              {sheets.map(sheet => (
                <tr key={sheet.number}>
                  <th scope="row">
                    <button
                      type="button"
                      className="link-button number stock-number"
                      onClick={() => open.mutate(sheet.number)}
                    >
                      {sheet.number}
                    </button>
                  </th>
                  <td>{sheet.supplierName || sheet.supplier}</td>
                  <td>{sheet.sentAt?.slice(0, 10)}</td>
                  <td className="stock-figure">{sheet.toCome}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      )}
      <p className="quiet">
        <KeyHint>Esc</KeyHint> goes back to the order number.
      </p>
    </section>
  )
}

function focusField(selector: string): void {
  const field = document.querySelector<HTMLElement>(`.goods-bench ${selector}`)
  field?.focus()
  if (field instanceof HTMLInputElement) field.select()
}
