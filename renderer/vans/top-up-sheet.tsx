import { useMutation } from '@tanstack/react-query'
import { type FormEvent, useRef, useState } from 'react'
import type { TopUp } from '../../shared-schemas/van-counts.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import type { PickLine } from './count-picks.ts'
import type { TopUpOfVan } from './use-top-up.ts'

interface TopUpSheetProps {
  readonly topUp: TopUpOfVan
  readonly shelf: string
  readonly onUndo: () => void
  readonly onLeave: () => void
}

/** What brings a van back to its list: picked bin by bin, confirmed by scanning, and booked in one go. */
export function TopUpSheet({ topUp, shelf, onUndo, onLeave }: TopUpSheetProps) {
  const { list, lines, picks } = topUp
  const book = useMutation({ mutationFn: topUp.book, networkMode: 'always' })
  const tryBooking = () => {
    if (picks.length > 0 && !book.isPending) book.mutate()
  }
  useScreenKeys({ F9: tryBooking })
  const intoVan = lines.filter(({ way }) => way === 'into-van')
  const back = lines.filter(({ way }) => way === 'back')
  return (
    <section className="count-sheet" aria-labelledby="top-up">
      <h2 id="top-up" className="stock-sentence">
        Top-up of <span className="number">{topUp.van}</span>: {wordConfirmed(lines)}
      </h2>
      <TypedPick topUp={topUp} shelf={shelf} />
      <p className="stock-acts">
        <button
          type="button"
          className="order-button order-button--main"
          aria-keyshortcuts="F9"
          onClick={tryBooking}
        >
          Book what is confirmed <KeyHint>F9</KeyHint>
        </button>
        <button type="button" className="order-button" aria-keyshortcuts="F2" onClick={onUndo}>
          Take the last one back <KeyHint>F2</KeyHint>
        </button>
        <button type="button" className="order-button" aria-keyshortcuts="F8" onClick={() => window.print()}>
          Print the pick list <KeyHint>F8</KeyHint>
        </button>
        <label>
          Of a family first{' '}
          <select
            className="top-up__kind"
            value={topUp.prefer}
            onChange={event => topUp.preferKind(event.target.value === 'pattern' ? 'pattern' : 'genuine')}
          >
            <option value="genuine">genuine parts</option>
            <option value="pattern">pattern parts</option>
          </select>
        </label>
        <button type="button" className="order-button" onClick={onLeave}>
          Another van
        </button>
      </p>
      <p className={topUp.done === '' ? 'unseen' : 'stock-done'} role="status">
        {topUp.done}
      </p>
      {(book.error ?? list.error) !== null && (
        <p className="problem-note" role="alert">
          {(book.error ?? list.error)?.message}
        </p>
      )}
      {list.data !== undefined && (
        <>
          <h3 className="stock-heading">Into the van</h3>
          <IntoVan lines={intoVan} />
          {back.length > 0 && (
            <>
              <h3 className="stock-heading">
                To bring back: beyond the list, or not on it. Scan them and they go to{' '}
                <span className="number">{shelf}</span>.
              </h3>
              <Leftovers lines={back} />
            </>
          )}
          <Shortages topUp={topUp} data={list.data} />
        </>
      )}
    </section>
  )
}

function wordConfirmed(lines: readonly PickLine[]): string {
  const wanted = lines.filter(({ way }) => way === 'into-van')
  const pieces = wanted.reduce((sum, line) => sum + line.wanted, 0)
  const picked = wanted.reduce((sum, line) => sum + line.picked, 0)
  return pieces === 0 ? 'the shop has nothing to put into it.' : `${picked} of ${pieces} pieces confirmed.`
}

function IntoVan({ lines }: { readonly lines: readonly PickLine[] }) {
  if (lines.length === 0) return <p className="quiet">Nothing to pick.</p>
  return (
    <table className="stock-table count-table">
      <thead>
        <tr>
          <th scope="col">From</th>
          <th scope="col">Part</th>
          <th scope="col">For</th>
          <th scope="col" className="stock-figure">
            Pieces
          </th>
          <th scope="col" className="stock-figure">
            Confirmed
          </th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ part, from, bin, for: asked, wanted, picked }) => (
          <tr key={`${part} ${from}`}>
            <td className="number">{bin === null ? from : `${bin} ${from}`}</td>
            <th scope="row" className="number stock-number">
              {part}
            </th>
            <td>{asked}</td>
            <td className="stock-figure">{wanted}</td>
            <Picked picked={picked} />
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** On paper the place for it stays empty, to be ticked. */
function Picked({ picked }: { readonly picked: number }) {
  return (
    <td className="stock-figure count-table__counted">
      {picked === 0 ? <span className="count-table__blank">not yet</span> : picked}
    </td>
  )
}

function Leftovers({ lines }: { readonly lines: readonly PickLine[] }) {
  return (
    <table className="stock-table count-table">
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col" className="stock-figure">
            Pieces
          </th>
          <th scope="col" className="stock-figure">
            Confirmed
          </th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ part, wanted, picked }) => (
          <tr key={part}>
            <th scope="row" className="number stock-number">
              {part}
            </th>
            <td className="stock-figure">{wanted}</td>
            <Picked picked={picked} />
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function Shortages({ topUp, data }: { readonly topUp: TopUpOfVan; readonly data: TopUp }) {
  const take = useMutation({ mutationFn: topUp.takeSpare, networkMode: 'always' })
  if (data.shortages.length === 0) return null
  return (
    <section aria-labelledby="shortages">
      <h3 id="shortages" className="stock-heading">
        The shop has none: the reorder is told
      </h3>
      <ul className="kept-list">
        {data.shortages.map(({ wanted, level, has, missing }) => (
          <li key={wanted}>
            {missing} of <span className="number">{wanted}</span> missing (level {level}, has {has}).{' '}
            {data.spares
              .filter(spare => spare.wanted === wanted)
              .map(spare => (
                <button
                  key={`${spare.van} ${spare.partNumber}`}
                  type="button"
                  className="plain-button"
                  onClick={() => take.mutate(spare)}
                >
                  {spare.van} has {spare.quantity} × {spare.partNumber} to spare: move{' '}
                  {spare.quantity === 1 ? 'it' : 'them'} here
                </button>
              ))}
          </li>
        ))}
      </ul>
      {take.error !== null && (
        <p className="problem-note" role="alert">
          {take.error.message}
        </p>
      )}
    </section>
  )
}

/** A part confirmed by hand, where its code cannot be scanned. */
function TypedPick({ topUp, shelf }: { readonly topUp: TopUpOfVan; readonly shelf: string }) {
  const [part, setPart] = useState('')
  const field = useRef<HTMLInputElement>(null)
  const confirm = useMutation({
    mutationFn: async () => topUp.confirm(part.trim(), 1, shelf),
    networkMode: 'always',
    onSuccess: () => {
      setPart('')
      field.current?.focus()
    },
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (part.trim() !== '') confirm.mutate()
  }
  return (
    <form className="stock-form" aria-label="Confirm by hand" onSubmit={onSubmit}>
      <div className="stock-form__field">
        <label htmlFor="top-up-part">Part in hand: scan it, or type its number</label>
        <input
          ref={field}
          id="top-up-part"
          className="text-field number"
          data-first-field
          autoComplete="off"
          spellCheck={false}
          maxLength={60}
          value={part}
          onChange={event => setPart(event.target.value)}
        />
      </div>
      <button type="submit" className="order-button">
        Confirm one <KeyHint>Enter</KeyHint>
      </button>
      <p className="stock-form__said" role="status">
        {confirm.error === null ? (confirm.data ?? '') : ''}
      </p>
      {confirm.error !== null && (
        <p className="problem-note" role="alert">
          {confirm.error.message}
        </p>
      )}
    </form>
  )
}
