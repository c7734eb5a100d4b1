import { useMutation } from '@tanstack/react-query'
import type { Delivery } from '../../shared-schemas/goods-in.ts'
import { ask } from '../bridge/client.ts'
import { ReasonForm } from './reason-form.tsx'
import type { OpenedSheet } from './receive-sheet.tsx'
import type { GoodsIn } from './use-goods-in.ts'

interface DeliveryListProps {
  readonly goods: GoodsIn
  readonly opened: OpenedSheet
}

/** What came of the sheet before, and what was closed, in the order in which it happened. */
export function DeliveryList({ goods, opened: { deliveries, closings } }: DeliveryListProps) {
  if (deliveries.length + closings.length === 0) return null
  return (
    <section aria-labelledby="deliveries">
      <h3 id="deliveries" className="stock-heading">
        What came before
      </h3>
      <ul className="goods-deliveries">
        {deliveries.map(one => (
          <DeliveryItem key={one.receiptId} goods={goods} delivery={one} />
        ))}
        {closings.map(({ line, pieces, reason, recordedAt, initials }) => (
          <li key={`${recordedAt} ${line} ${pieces}`}>
            {recordedAt.slice(0, 10)} {initials}: line {line},{' '}
            {pieces > 0 ? `${pieces} will not come` : `${-pieces} expected again`}: {reason}
          </li>
        ))}
      </ul>
    </section>
  )
}

function DeliveryItem({ goods, delivery }: { readonly goods: GoodsIn; readonly delivery: Delivery }) {
  const { receiptId, recordedAt, initials, deliveryNote, lines } = delivery
  const back = useMutation({
    mutationFn: async (reason: string) => {
      await ask('goods-in.take-back-delivery', { receiptId, reason, ...goods.signed })
      await goods.refresh()
    },
    networkMode: 'always',
  })
  const standing = lines.filter(({ isTakenBack }) => !isTakenBack)
  const name = deliveryNote === '' ? `of ${recordedAt.slice(0, 10)}` : `note ${deliveryNote}`
  return (
    <li data-reversed={standing.length === 0 || undefined}>
      {recordedAt.slice(0, 10)} {initials}
      {deliveryNote === '' ? '' : `, note ${deliveryNote}`}: {lines.map(wordLine).join('; ')}.{' '}
      {standing.length === 0 ? (
        <em>Taken back.</em>
      ) : (
        <ReasonForm
          name="Take back"
          about={`the delivery ${name}`}
          asks="Why is it taken back?"
          problem={back.error}
          isBusy={back.isPending}
          onReason={reason => back.mutate(reason)}
        />
      )}
    </li>
  )
}

function wordLine({ line, partNumber, quantity, condition, to, isTakenBack }: Delivery['lines'][number]) {
  const damaged = condition === 'damaged' ? ' damaged' : ''
  return `line ${line}, ${quantity} × ${partNumber}${damaged} into ${to}${isTakenBack ? ' (taken back)' : ''}`
}
