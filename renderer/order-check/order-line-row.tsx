import { memo } from 'react'
import type { CheckedLine, OrderLine } from '../../shared-schemas/order-check.ts'
import { VerdictWord } from '../components/verdict-word.tsx'
import type { DraftStep } from './draft-order.ts'
import { LetPass } from './let-pass.tsx'
import { flagsOf, severities, severityNames, wordFindings } from './order-words.ts'

interface OrderLineRowProps {
  readonly line: CheckedLine
  /** The same line as it was written. */
  readonly given: OrderLine
  readonly supplier: string
  readonly isOpen: boolean
  /** Who signs; only an open row asks. */
  readonly initials: string
  readonly step: (step: DraftStep) => void
  readonly onRecorded: (line: number) => void
}

/**
 * One line of the order in one line: what is ordered, for what, the verdict, and how much was found. Drawn anew only
 * when it changes: an order may have a thousand, and somebody types beside them.
 */
export const OrderLineRow = memo(function OrderLineRow({
  line,
  given,
  supplier,
  isOpen,
  initials,
  step,
  onRecorded,
}: OrderLineRowProps) {
  const stops = wordFindings(line, 'stop')
  const [gravest] = flagsOf(line, 'stop')
  const detailId = `order-line-${line.line}`
  return (
    <li className={`order-line${stops === '' ? '' : ' order-line--stopped'}`} data-open={isOpen || undefined}>
      <button
        type="button"
        className="order-line__line"
        data-order-line={line.line}
        aria-expanded={isOpen}
        aria-controls={isOpen ? detailId : undefined}
        onClick={() => step({ do: 'open-line', line: isOpen ? null : line.line })}
      >
        <span className="order-line__place">
          <span className="unseen">Line </span>
          {line.line}
        </span>
        <span className="order-line__quantity">{line.quantity === null ? '?' : `${line.quantity} ×`}</span>
        <span className="order-line__part">
          <span className="number order-line__number">{line.partNumber || 'no number'}</span>{' '}
          <span className="order-line__description">{line.description}</span>
        </span>
        <span className="order-line__fit">
          {line.verdict === null ? (
            <span className="quiet">for stock</span>
          ) : (
            <VerdictWord verdict={line.verdict} />
          )}{' '}
          <ModelNamed model={line.model} typed={given.modelNumber} />
        </span>
        <span className="order-line__findings">
          {stops !== '' && <strong className="order-line__stops">{stops}</strong>}{' '}
          {[wordFindings(line, 'caution'), wordFindings(line, 'note')].filter(said => said !== '').join(', ')}
        </span>
        {!isOpen && gravest !== undefined && <span className="order-line__why">{gravest.text}</span>}
      </button>
      {isOpen && (
        <div className="order-line__detail" id={detailId}>
          {line.flags.length === 0 && <p>Nothing was found on this line.</p>}
          {severities.map(severity => {
            const flags = flagsOf(line, severity)
            return (
              flags.length > 0 && (
                <section key={severity} className={`findings findings--${severity}`}>
                  <h3 className="findings__name">{severityNames[severity]}</h3>
                  <ul className="findings__list">
                    {flags.map(flag => (
                      <li key={`${flag.code} ${flag.text}`}>
                        <p className="findings__text">{flag.text}</p>
                        {flag.mayOverride === true && (
                          <LetPass
                            flag={flag}
                            line={given}
                            supplier={supplier}
                            initials={initials}
                            onSign={signed => step({ do: 'sign', initials: signed })}
                            onRecorded={() => onRecorded(line.line)}
                          />
                        )}
                      </li>
                    ))}
                  </ul>
                </section>
              )
            )
          })}
        </div>
      )}
    </li>
  )
})

function ModelNamed({
  model,
  typed,
}: {
  readonly model: CheckedLine['model']
  readonly typed: string | undefined
}) {
  if (model === null && typed === undefined) return null
  return (
    <span className="order-line__model">
      {model === null ? 'as written: ' : `${model.brand} `}
      <span className="number">{model === null ? typed : model.modelNumber}</span>
    </span>
  )
}
