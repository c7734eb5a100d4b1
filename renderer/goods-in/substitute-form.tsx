import { useQuery } from '@tanstack/react-query'
import { type FormEvent, useState } from 'react'
import type { OrderSheet } from '../../shared-schemas/order-sheets.ts'
import { ask } from '../bridge/client.ts'
import type { GoodsIn, Stranger } from './use-goods-in.ts'

interface SubstituteFormProps {
  readonly goods: GoodsIn
  readonly sheet: OrderSheet
  readonly stranger: Stranger
}

/** A part that nobody ordered: for which line it came, and whether it may stand for what was ordered there. */
export function SubstituteForm({
  goods,
  sheet,
  stranger: { partNumber, description, pieces },
}: SubstituteFormProps) {
  const due = sheet.lines.filter(({ toCome }) => toCome > 0)
  const [line, setLine] = useState(String(due[0]?.line ?? sheet.lines[0]?.line ?? ''))
  const [quantity, setQuantity] = useState(String(pieces))
  const [paid, setPaid] = useState('')
  const [because, setBecause] = useState('')
  const judged = useQuery({
    queryKey: ['stock', 'substitute', sheet.number, line, partNumber],
    queryFn: () =>
      ask('goods-in.judge-substitute', { number: sheet.number, line: Number(line), part: partNumber }),
    enabled: line !== '',
    staleTime: 0,
  })
  const needsReason = judged.data?.isProved === false
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (judged.data === undefined || !/^[1-9]\d{0,5}$/.test(quantity.trim())) return
    const substitute = { line: Number(line), part: partNumber, quantity: Number(quantity), paid }
    goods.change({
      ...goods.draft,
      substitutes: [...goods.draft.substitutes, { ...substitute, because: needsReason ? because : '' }],
    })
    goods.setStranger(null)
  }
  return (
    <form className="stock-form goods-substitute" aria-labelledby="substitute" onSubmit={onSubmit}>
      <h3 id="substitute" className="asked-sentence">
        <span className="number">{partNumber}</span> {description} was not ordered. For which line did it
        come?
      </h3>
      <div className="stock-form__field">
        <label htmlFor="substitute-line">In place of</label>
        <select
          id="substitute-line"
          className="text-field"
          // biome-ignore lint/a11y/noAutofocus: the scan has just asked for this very field
          autoFocus
          value={line}
          onChange={event => setLine(event.target.value)}
        >
          {sheet.lines.map(one => (
            <option key={one.line} value={one.line}>
              line {one.line}, {one.partNumber}, {one.toCome} to come
            </option>
          ))}
        </select>
      </div>
      <div className="stock-form__field stock-form__field--short">
        <label htmlFor="substitute-quantity">Pieces</label>
        <input
          id="substitute-quantity"
          className="text-field"
          inputMode="numeric"
          maxLength={6}
          required
          pattern="[1-9][0-9]{0,5}"
          value={quantity}
          onChange={event => setQuantity(event.target.value)}
        />
      </div>
      <div className="stock-form__field stock-form__field--short">
        <label htmlFor="substitute-paid">Paid each</label>
        <input
          id="substitute-paid"
          className="text-field"
          inputMode="decimal"
          maxLength={12}
          value={paid}
          onChange={event => setPaid(event.target.value)}
        />
      </div>
      {judged.data !== undefined && (
        <div className="goods-judged" role="status">
          <p>
            <strong>{judged.data.isProved ? 'May be taken.' : 'Not proved.'}</strong> {judged.data.text}
          </p>
          {judged.data.cautions.map(text => (
            <p key={text} className="caution">
              {text}
            </p>
          ))}
        </div>
      )}
      {needsReason && (
        <div className="stock-form__field">
          <label htmlFor="substitute-because">Why is it taken all the same?</label>
          <input
            id="substitute-because"
            className="text-field"
            required
            maxLength={400}
            value={because}
            onChange={event => setBecause(event.target.value)}
          />
        </div>
      )}
      <button type="submit" className="order-button" disabled={judged.data === undefined}>
        Take it in
      </button>
      <button type="button" className="order-button" onClick={() => goods.setStranger(null)}>
        Leave it out
      </button>
      {judged.error !== null && (
        <p className="problem-note" role="alert">
          {judged.error.message}
        </p>
      )}
    </form>
  )
}
