import type { CheckedLine, OrderFlag } from '../../shared-schemas/order-check.ts'
import { VerdictWord } from '../components/verdict-word.tsx'
import { flagsOf, severities, severityNames, wordFindings } from './order-words.ts'

interface OrderLineRowProps {
  readonly line: CheckedLine
  /** What the line says of the model, for when that leaves several open. */
  readonly modelTyped: string | undefined
  readonly isOpen: boolean
  readonly onToggle: () => void
  /** What stands under a stop that may be let pass. */
  readonly renderLetPass: (flag: OrderFlag) => React.ReactNode
}

/** One line of the order in one line: what is ordered, for what, the verdict, and how much was found. */
export function OrderLineRow({ line, modelTyped, isOpen, onToggle, renderLetPass }: OrderLineRowProps) {
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
        onClick={onToggle}
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
          <ModelNamed model={line.model} typed={modelTyped} />
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
                        {flag.mayOverride === true && renderLetPass(flag)}
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
}

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
