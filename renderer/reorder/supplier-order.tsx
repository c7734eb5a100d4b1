import type { ProposedOrder } from '../../shared-schemas/proposal.ts'
import { wordMoney } from '../components/word-money.ts'
import { count, ReorderLine } from './reorder-line.tsx'
import { quantityText, type Reorder, useWeighedOrder, wantedLines } from './use-reorder.ts'

interface SupplierOrderProps {
  readonly order: ProposedOrder
  readonly reorder: Reorder
}

/** One supplier's order: what it comes to as it stands, what is missing to free carriage, and its lines. */
export function SupplierOrder({ order, reorder }: SupplierOrderProps) {
  const { typed, type, opened, setOpened, initials, setInitials, aim, proposal } = reorder
  const weighed = useWeighedOrder(order, typed)
  const byPart = new Map(weighed.data?.lines.map(line => [line.partNumber, line]))
  const data = proposal.data
  const { supplier, name, currency } = order
  const headingId = `order-of-${supplier.replaceAll(/\W/g, '-')}`
  return (
    <section aria-labelledby={headingId}>
      <h2 id={headingId} className="stock-heading">
        {name || supplier}: {wordTotals(order, reorder, weighed.data)}
      </h2>
      <p className="quiet">{wordThresholds(order, weighed.data)}</p>
      <ul className="order-lines">
        {order.lines.map(line => {
          const key = `${supplier} ${line.partNumber}`
          return (
            <ReorderLine
              key={key}
              {...{ line, supplier, currency, aim, initials }}
              supplierName={name || supplier}
              weighed={byPart.get(line.partNumber)}
              quantity={quantityText(typed, supplier, line)}
              isOpen={opened === key}
              bucket={data?.bucket ?? 'week'}
              reviewDays={data?.reviewDays ?? 7}
              onType={type}
              onOpen={setOpened}
              onSign={setInitials}
              onChangePart={reorder.changes.change}
              onSettled={weighed.refetch}
            />
          )
        })}
      </ul>
    </section>
  )
}

type Weighed = ReturnType<typeof useWeighedOrder>['data']

function wordTotals(order: ProposedOrder, { typed }: Reorder, weighed: Weighed): string {
  const { currency } = order
  const { goods, carriage, total } = weighed ?? order
  const money = (price: string) => wordMoney({ price, currency })
  const sent = Number(carriage) === 0 ? 'carriage paid' : `carriage ${money(carriage)}`
  return `${count(wantedLines(order, typed).length, 'line')}, goods ${money(goods)}, ${sent}, together ${money(total)}.`
}

/** How far it is to the minimum order, and to where carriage is free. */
function wordThresholds({ currency, terms, carriage }: ProposedOrder, weighed: Weighed): string {
  const money = (price: string) => wordMoney({ price, currency })
  if (weighed?.toMinimum != null)
    return `${money(weighed.toMinimum)} is missing to the minimum order of ${money(terms.minimumOrder ?? '0')}.`
  if (weighed?.toCarriagePaid != null)
    return `${money(weighed.toCarriagePaid)} more of goods and the carriage of ${money(weighed.carriage)} falls away.`
  return Number(carriage) === 0 && terms.carriagePaidFrom !== null
    ? `Carriage is free from ${money(terms.carriagePaidFrom)}.`
    : ''
}
