import { type ReactNode, useState } from 'react'
import { BuyerForm } from './buyer-form.tsx'
import { ReckoningForm } from './reckoning-form.tsx'
import { SupplierOrderingForm } from './supplier-ordering-form.tsx'

/** What seldom changes: who orders, how each supplier wants its orders, and what every proposal is reckoned with. */
export function OrderingSettings() {
  return (
    <section aria-labelledby="reorder-settings">
      <h2 id="reorder-settings" className="stock-heading">
        How this shop orders
      </h2>
      <Folded summary="Who orders">
        <BuyerForm />
      </Folded>
      <Folded summary="How a supplier wants its orders">
        <SupplierOrderingForm />
      </Folded>
      <Folded summary="What every proposal is reckoned with">
        <ReckoningForm />
      </Folded>
    </section>
  )
}

/** Asks nothing until it is opened. */
function Folded({ summary, children }: { readonly summary: string; readonly children: ReactNode }) {
  const [isOpen, setOpen] = useState(false)
  return (
    <details className="reorder-left-out" onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>{summary}</summary>
      {isOpen && children}
    </details>
  )
}
