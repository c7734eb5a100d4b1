import { useQuery } from '@tanstack/react-query'
import { type KeyboardEvent, memo } from 'react'
import type { OrderFlag } from '../../shared-schemas/order-check.ts'
import type { ProposedLine, WeighedOrder } from '../../shared-schemas/proposal.ts'
import type { Bucket } from '../../shared-schemas/stock-levels.ts'
import { ask } from '../bridge/client.ts'
import { wordMoney } from '../components/word-money.ts'
import { LetPass } from '../order-check/let-pass.tsx'
import { severities, severityNames } from '../order-check/order-words.ts'
import { wordArithmetic } from './line-words.ts'
import { PartKnownPanel } from './part-known.tsx'
import { StockChart } from './stock-chart.tsx'
import type { PartChange } from './use-part-changes.ts'
import { readQuantity } from './use-reorder.ts'

export interface ReorderLineProps {
  readonly line: ProposedLine
  readonly supplier: string
  readonly supplierName: string
  readonly currency: string
  /** What it comes to with the quantity that was typed; undefined until that is known. */
  readonly weighed: WeighedOrder['lines'][number] | undefined
  readonly quantity: string
  readonly isOpen: boolean
  readonly bucket: Bucket
  readonly reviewDays: number
  readonly aim: { readonly fillRate?: number }
  readonly initials: string
  readonly onType: (supplier: string, partNumber: string, quantity: string) => void
  readonly onOpen: (key: string | null) => void
  readonly onSign: (initials: string) => void
  readonly onChangePart: (change: PartChange) => void
  readonly onSettled: () => void
}

/** One line of an order: how many, of what, for how much, and what the check found; its arithmetic unfolds below. */
export const ReorderLine = memo(function ReorderLine(props: ReorderLineProps) {
  const { line, supplier, currency, weighed, quantity, isOpen, onType, onOpen } = props
  const { partNumber, description } = line
  const key = `${supplier} ${partNumber}`
  const flags = weighed?.flags ?? line.flags
  const stops = flags.filter(({ severity }) => severity === 'stop')
  const cautions = flags.filter(({ severity }) => severity === 'caution')
  const pieces = readQuantity(quantity)
  const detailId = `reorder-${key.replaceAll(/\W/g, '-')}`
  return (
    <li className={`order-line${stops.length === 0 ? '' : ' order-line--stopped'}`}>
      <div className="reorder-line">
        <input
          className="text-field reorder-line__quantity"
          aria-label={`Pieces of ${partNumber}`}
          aria-invalid={pieces === undefined || undefined}
          inputMode="numeric"
          maxLength={6}
          data-reorder-quantity=""
          value={quantity}
          onChange={event => onType(supplier, partNumber, event.target.value)}
          onKeyDown={event => {
            if (event.key === 'Enter') onOpen(isOpen ? null : key)
            else stepThroughQuantities(event)
          }}
        />
        <button
          type="button"
          className="reorder-line__line"
          aria-expanded={isOpen}
          aria-controls={isOpen ? detailId : undefined}
          onClick={() => onOpen(isOpen ? null : key)}
        >
          <span>
            <span className="number order-line__number">{partNumber}</span> {description}
          </span>
          <span className="reorder-line__amount">
            {pieces === 0 ? 'left out' : wordMoney({ price: weighed?.amount ?? line.amount, currency })}
          </span>
          <span className="order-line__findings">
            {stops.length > 0 && <strong className="order-line__stops">{count(stops.length, 'stop')}</strong>}{' '}
            {cautions.length > 0 && count(cautions.length, 'caution')}
          </span>
          {!isOpen && stops[0] !== undefined && <span className="order-line__why">{stops[0].text}</span>}
        </button>
      </div>
      {pieces === undefined && (
        <p className="problem-note" role="alert">
          Write a whole number of pieces; 0 leaves the line out.
        </p>
      )}
      {isOpen && (
        <div className="order-line__detail" id={detailId}>
          <LineDetail {...props} flags={flags} pieces={pieces ?? line.quantity} />
        </div>
      )}
    </li>
  )
})

/** Up and down go from one quantity to the next, over all suppliers. */
function stepThroughQuantities(event: KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
  const fields = [...document.querySelectorAll<HTMLInputElement>('[data-reorder-quantity]')]
  const next = fields[fields.indexOf(event.currentTarget) + (event.key === 'ArrowDown' ? 1 : -1)]
  event.preventDefault()
  next?.focus()
  next?.select()
}

function LineDetail({
  line,
  supplier,
  supplierName,
  currency,
  weighed,
  bucket,
  reviewDays,
  aim,
  initials,
  flags,
  pieces,
  onSign,
  onChangePart,
  onSettled,
}: ReorderLineProps & { readonly flags: readonly OrderFlag[]; readonly pieces: number }) {
  const explained = useQuery({
    queryKey: ['proposal.explain-part', line.partNumber, pieces, aim],
    queryFn: () => ask('proposal.explain-part', { part: line.partNumber, quantity: pieces, ...aim }),
    placeholderData: before => before,
  })
  const price = weighed?.unitPrice ?? line.unitPrice
  return (
    <>
      <div className="reorder-words">
        {wordArithmetic(line, { supplierName, bucket, reviewDays }).map(sentence => (
          <p key={sentence}>{sentence}</p>
        ))}
        <p>
          {wordMoney({ price, currency })} a piece from {supplierName}
          {line.supplierCode !== null && `, its number ${line.supplierCode}`}.{' '}
          {weighed !== undefined &&
            `${weighed.oneMore.quantity} instead would change the total by ${wordMoney({ price: weighed.oneMore.change, currency })}.`}
        </p>
      </div>
      <PartKnownPanel line={line} initials={initials} onChange={onChangePart} />
      {explained.data !== undefined && <StockChart explained={explained.data} />}
      {severities.map(severity => {
        const found = flags.filter(flag => flag.severity === severity)
        return (
          found.length > 0 && (
            <section key={severity} className={`findings findings--${severity}`}>
              <h3 className="findings__name">{severityNames[severity]}</h3>
              <ul className="findings__list">
                {found.map(flag => (
                  <li key={`${flag.code} ${flag.text}`}>
                    <p className="findings__text">{flag.text}</p>
                    {flag.mayOverride === true && (
                      <LetPass
                        flag={flag}
                        line={{ line: 1, partNumber: line.partNumber, quantity: pieces }}
                        supplier={supplier}
                        initials={initials}
                        onSign={onSign}
                        onRecorded={onSettled}
                      />
                    )}
                  </li>
                ))}
              </ul>
            </section>
          )
        )
      })}
    </>
  )
}

export function count(number: number, what: string): string {
  return `${number} ${what}${number === 1 ? '' : 's'}`
}
