import { useQuery } from '@tanstack/react-query'
import { useMemo, useReducer } from 'react'
import { writeCheckedOrder } from '../../shared-schemas/checked-order-text.ts'
import type { CheckedOrder, OrderLine } from '../../shared-schemas/order-check.ts'
import { ask } from '../bridge/client.ts'
import { type AskedOrder, emptyDraft, takeStep } from './draft-order.ts'

export interface AnsweredOrder {
  readonly given: readonly OrderLine[]
  readonly checked: CheckedOrder
}

/** The draft order, what the check says of it, and the checked order as CSV. */
export function useOrderCheck() {
  const [draft, step] = useReducer(takeStep, emptyDraft)
  const { asked } = draft
  const answer = useQuery({
    queryKey: ['order-check', asked],
    queryFn: () => checkText(asked),
    enabled: asked !== null,
    // Stock and overrides change under it: what is shown was asked for just now.
    staleTime: 0,
    structuralSharing: false,
  })
  const suppliers = useQuery({
    queryKey: ['order-check.list-suppliers'],
    queryFn: () => ask('order-check.list-suppliers', {}),
  })
  const summary = useQuery({
    queryKey: ['catalogue.read-summary'],
    queryFn: () => ask('catalogue.read-summary', {}),
    staleTime: Number.POSITIVE_INFINITY,
  })
  const answered = asked === null || answer.isError ? undefined : answer.data
  const csv = useMemo(
    () => (answered === undefined ? null : writeCheckedOrder(answered.given, answered.checked)),
    [answered],
  )
  return {
    draft,
    step,
    answer,
    answered,
    csv,
    suppliers: suppliers.data?.suppliers ?? [],
    shop: summary.data?.locations.find(({ kind }) => kind === 'shop')?.name ?? 'Tallyplate',
  }
}

export type OrderCheck = ReturnType<typeof useOrderCheck>

async function checkText(asked: AskedOrder | null): Promise<AnsweredOrder> {
  if (asked === null) throw new Error('nothing is checked before something is asked for')
  const { text, name, supplier } = asked
  const { lines } = await ask('order-check.read-order', { text, name })
  const checked = await ask('order-check.check-order', {
    lines,
    ...(supplier === '' ? {} : { supplier }),
  })
  return { given: lines, checked }
}
