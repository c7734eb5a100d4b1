import type { UseMutationResult } from '@tanstack/react-query'
import type { Output } from '../../shared-schemas/index.ts'
import type { OrderSheet, SheetLine } from '../../shared-schemas/order-sheets.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { ScrollRegion } from '../components/scroll-region.tsx'
import { changeLine, type LineDraft, lineDraftOf, wordStanding } from './arrival-draft.ts'
import { CloseLine } from './close-line.tsx'
import { DeliveryList } from './delivery-list.tsx'
import { SubstituteForm } from './substitute-form.tsx'
import type { GoodsIn } from './use-goods-in.ts'

export type OpenedSheet = Output<'order-sheets.read-sheet'> & Output<'goods-in.read-deliveries'>

interface ReceiveSheetProps {
  readonly goods: GoodsIn
  readonly opened: OpenedSheet
  readonly book: UseMutationResult<void, Error, void>
  readonly onUndo: () => void
}

/** One sheet: what was ordered, what came before, and what comes now. */
export function ReceiveSheet({ goods, opened, book, onUndo }: ReceiveSheetProps) {
  const { sheet } = opened
  const { stranger, condition, draft } = goods
  return (
    <section className="shelf" aria-labelledby="receive-sheet">
      <h2 id="receive-sheet" className="stock-sentence">
        <span className="number">{sheet.number}</span> from {sheet.supplierName || sheet.supplier}:{' '}
        {wordDue(sheet)}
      </h2>
      {condition === 'damaged' && (
        <p className="asked-sentence">What is scanned now is damaged: it goes into quarantine.</p>
      )}
      {stranger !== null && (
        <SubstituteForm key={stranger.partNumber} goods={goods} sheet={sheet} stranger={stranger} />
      )}
      <ScrollRegion label="Lines of the sheet">
        <table className="stock-table goods-table" aria-labelledby="receive-sheet">
          <thead>
            <tr>
              <th scope="col" className="stock-figure">
                Line
              </th>
              <th scope="col">Part</th>
              <th scope="col" className="stock-figure">
                Ordered
              </th>
              <th scope="col">Came good</th>
              <th scope="col">Came damaged</th>
              <th scope="col">Paid each</th>
              <th scope="col">Stands</th>
            </tr>
          </thead>
          <tbody>
            {sheet.lines.map(line => (
              <Line key={line.line} goods={goods} sheet={sheet} line={line} />
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      {draft.substitutes.map((one, at) => (
        <p key={`${one.line} ${one.part}`}>
          For line {one.line}: {one.quantity} × <span className="number">{one.part}</span>
          {one.because === '' ? '' : `, taken because: ${one.because}`}{' '}
          <button
            type="button"
            className="plain-button"
            onClick={() =>
              goods.change({ ...draft, substitutes: draft.substitutes.filter((_, place) => place !== at) })
            }
          >
            Leave it out<span className="unseen"> {one.part}</span>
          </button>
        </p>
      ))}
      <BookForm goods={goods} book={book} onUndo={onUndo} />
      <DeliveryList goods={goods} opened={opened} />
    </section>
  )
}

function wordDue({ state, lines }: OrderSheet): string {
  const [ordered, left] = [
    lines.reduce((sum, { quantity }) => sum + quantity, 0),
    lines.reduce((sum, { toCome }) => sum + toCome, 0),
  ]
  if (state === 'draft' || state === 'checked') return 'it was not sent yet.'
  if (state === 'cancelled') return 'it is cancelled.'
  return left === 0 ? 'all of it came.' : `${left} of ${ordered} pieces to come.`
}

interface LineProps {
  readonly goods: GoodsIn
  readonly sheet: OrderSheet
  readonly line: SheetLine
}

function Line({ goods, sheet, line }: LineProps) {
  const typed = lineDraftOf(goods.draft, line.line)
  const field = (name: keyof LineDraft, label: string) => ({
    'aria-label': `${label}, line ${line.line}`,
    inputMode: 'decimal' as const,
    autoComplete: 'off',
    maxLength: 12,
    value: typed[name],
    onChange: (event: { readonly target: { readonly value: string } }) =>
      goods.change(changeLine(goods.draft, line.line, { [name]: event.target.value })),
  })
  const meant = [line.for.modelNumber, line.for.job, line.for.customer].filter(one => one !== null)
  return (
    <tr data-due={line.toCome > 0 || undefined}>
      <td className="stock-figure">{line.line}</td>
      <th scope="row">
        <span className="number stock-number">{line.partNumber}</span>
        <br />
        {line.description}
        {meant.length > 0 && <em> For {meant.join(', ')}.</em>}
      </th>
      <td className="stock-figure">
        {line.quantity}
        {line.received > 0 && <> ({line.received} came)</>}
      </td>
      <td>
        <input {...field('good', 'Came good')} className="text-field stock-short goods-count" />
      </td>
      <td>
        <input {...field('damaged', 'Came damaged')} className="text-field stock-short" />
      </td>
      <td>
        <input
          {...field('paid', 'Paid each')}
          className="text-field stock-short"
          placeholder={line.unitPrice}
        />
      </td>
      <td>
        {wordStanding(line, goods.draft)}
        {line.damaged > 0 && `, ${line.damaged} came damaged before`}
        {line.closed > 0 && `, ${line.closed} closed`}
        <CloseLine goods={goods} number={sheet.number} line={line} />
      </td>
    </tr>
  )
}

function BookForm({ goods, book, onUndo }: Omit<ReceiveSheetProps, 'opened'>) {
  return (
    <form
      className="stock-form"
      aria-label="Book what came"
      onSubmit={event => {
        event.preventDefault()
        if (!book.isPending) book.mutate()
      }}
    >
      <div className="stock-form__field">
        <label htmlFor="goods-note">Delivery note</label>
        <input
          id="goods-note"
          className="text-field number"
          maxLength={60}
          autoComplete="off"
          value={goods.deliveryNote}
          onChange={event => goods.setDeliveryNote(event.target.value)}
        />
      </div>
      <div className="stock-form__field">
        <label htmlFor="goods-to">Goes into</label>
        <select
          id="goods-to"
          className="text-field"
          value={goods.to}
          onChange={event => goods.setTo(event.target.value)}
        >
          <option value="">the shop</option>
          {goods.locations
            .filter(({ kind }) => kind !== 'quarantine')
            .map(({ location, name }) => (
              <option key={location} value={location}>
                {name}
              </option>
            ))}
        </select>
      </div>
      <div className="stock-form__field stock-form__field--short">
        <label htmlFor="goods-initials">Initials</label>
        <input
          id="goods-initials"
          className="text-field"
          maxLength={6}
          autoComplete="off"
          value={goods.initials}
          onChange={event => goods.setInitials(event.target.value)}
        />
      </div>
      <button type="submit" className="order-button order-button--main" aria-keyshortcuts="F9">
        Book what came <KeyHint>F9</KeyHint>
      </button>
      <button
        type="button"
        className="order-button"
        aria-keyshortcuts="F7"
        aria-pressed={goods.condition === 'damaged'}
        onClick={() => goods.setCondition(goods.condition === 'good' ? 'damaged' : 'good')}
      >
        Scans are damaged <KeyHint>F7</KeyHint>
      </button>
      <button type="button" className="order-button" aria-keyshortcuts="F10" onClick={onUndo}>
        Take the last one back <KeyHint>F10</KeyHint>
      </button>
      <p className="stock-form__said" role="status">
        {goods.said}
      </p>
      {book.error !== null && (
        <p className="problem-note" role="alert">
          {book.error.message}
        </p>
      )}
    </form>
  )
}
