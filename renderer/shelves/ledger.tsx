import { useInfiniteQuery } from '@tanstack/react-query'
import { type FormEvent, useId, useState } from 'react'
import type { Output } from '../../shared-schemas/index.ts'
import { ask } from '../bridge/client.ts'
import { ScrollRegion } from '../components/scroll-region.tsx'
import { wordMoment, wordMovement } from './shelf-words.ts'
import { useStockChange } from './use-stock-change.ts'

type Line = Output<'stock-ledger.list-movements'>['movements'][number]

interface LedgerProps {
  readonly about: { readonly part: string } | { readonly location: string }
  readonly signed: { readonly initials?: string }
}

/** What happened, the latest first, with what there was after it; page by page, and each line can be taken back. */
export function Ledger({ about, signed }: LedgerProps) {
  const [open, setOpen] = useState<string | null>(null)
  const pages = useInfiniteQuery({
    queryKey: ['stock', 'ledger', about],
    queryFn: ({ pageParam }) =>
      ask('stock-ledger.list-movements', {
        ...about,
        most: 20,
        ...(pageParam === '' ? {} : { before: pageParam }),
      }),
    initialPageParam: '',
    getNextPageParam: last => (last.more ? last.movements.at(-1)?.movementId : undefined),
    staleTime: 0,
  })
  const lines = pages.data?.pages.flatMap(({ movements }) => movements) ?? []
  const hasBalance = 'part' in about
  return (
    <section aria-labelledby="ledger">
      <h3 id="ledger" className="stock-heading">
        What happened, the latest first
      </h3>
      {pages.error !== null && (
        <p className="problem-note" role="alert">
          {pages.error.message}
        </p>
      )}
      {pages.data !== undefined && lines.length === 0 ? (
        <p className="quiet">Nothing yet.</p>
      ) : (
        <ScrollRegion label="Movements">
          <table className="stock-table">
            <thead>
              <tr>
                <th scope="col">When</th>
                {!hasBalance && <th scope="col">Part</th>}
                <th scope="col" className="stock-figure">
                  Pieces
                </th>
                <th scope="col">From, to</th>
                <th scope="col">Why</th>
                <th scope="col">Who</th>
                {hasBalance && (
                  <th scope="col" className="stock-figure">
                    In all, after
                  </th>
                )}
                <th scope="col">
                  <span className="unseen">Take back</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {lines.map(line => (
                <LedgerLine
                  key={line.movementId}
                  line={line}
                  hasBalance={hasBalance}
                  isOpen={open === line.movementId}
                  onOpen={() => setOpen(open === line.movementId ? null : line.movementId)}
                  signed={signed}
                />
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      )}
      {pages.hasNextPage && (
        <button
          type="button"
          className="order-button"
          disabled={pages.isFetchingNextPage}
          onClick={() => void pages.fetchNextPage()}
        >
          Show older ones
        </button>
      )}
    </section>
  )
}

interface LedgerLineProps {
  readonly line: Line
  readonly hasBalance: boolean
  readonly isOpen: boolean
  readonly onOpen: () => void
  readonly signed: { readonly initials?: string }
}

function LedgerLine({ line, hasBalance, isOpen, onOpen, signed }: LedgerLineProps) {
  const isCountOrOpening = [line.from, line.to].some(place => place === 'count' || place === 'opening')
  const mayTakeBack = line.reverses === null && line.reversedBy === null && !isCountOrOpening
  return (
    <>
      <tr data-reversed={line.reversedBy !== null || undefined}>
        <th scope="row" className="ledger__when">
          {wordMoment(line.recordedAt)}
        </th>
        {!hasBalance && <td className="number">{line.partNumber}</td>}
        <td className="stock-figure">{line.quantity}</td>
        <td className="ledger__way">
          <span className="number">{line.from}</span> → <span className="number">{line.to}</span>
        </td>
        <td>
          {line.reason}
          {line.reference !== null && !isOfCount(line) && (
            <>
              {' '}
              <span className="number ledger__reference">{line.reference}</span>
            </>
          )}
          {line.usedBeforeBooked && <em> Used before it was booked.</em>}
          {line.reversedBy !== null && <em> Taken back.</em>}
        </td>
        <td>{line.initials}</td>
        {hasBalance && <td className="stock-figure">{line.balance}</td>}
        <td>
          {mayTakeBack && (
            <button type="button" className="plain-button" aria-expanded={isOpen} onClick={onOpen}>
              Take back…<span className="unseen"> {wordMovement(line)}</span>
            </button>
          )}
        </td>
      </tr>
      {isOpen && mayTakeBack && (
        <tr>
          <td colSpan={7}>
            <TakeBack line={line} signed={signed} onDone={onOpen} />
          </td>
        </tr>
      )}
    </>
  )
}

/** A count's own id says nothing to a person; that it was a count stands under from and to. */
function isOfCount({ from, to }: Line): boolean {
  return from === 'count' || to === 'count'
}

interface TakeBackProps {
  readonly line: Line
  readonly signed: { readonly initials?: string }
  readonly onDone: () => void
}

/** Nothing is rubbed out: a further movement takes the first one back, and says why. */
function TakeBack({ line, signed, onDone }: TakeBackProps) {
  const id = useId()
  const [reason, setReason] = useState('')
  const reverse = useStockChange(
    () => ask('stock-ledger.reverse-movement', { movementId: line.movementId, reason, ...signed }),
    onDone,
  )
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!reverse.isPending) reverse.mutate(undefined)
  }
  return (
    <form className="stock-form" aria-label="Take back" onSubmit={onSubmit}>
      <div className="stock-form__field">
        <label htmlFor={`${id}-reason`}>Why is it taken back?</label>
        <input
          id={`${id}-reason`}
          className="text-field"
          // biome-ignore lint/a11y/noAutofocus: the person has just asked for this very field
          autoFocus
          required
          maxLength={400}
          value={reason}
          onChange={event => setReason(event.target.value)}
        />
      </div>
      <button type="submit" className="order-button">
        Take back
      </button>
      {reverse.error !== null && (
        <p className="problem-note" role="alert">
          {reverse.error.message}
        </p>
      )}
    </form>
  )
}
