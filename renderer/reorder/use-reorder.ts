import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { ProposedOrder, WeighedOrder } from '../../shared-schemas/proposal.ts'
import { ask } from '../bridge/client.ts'
import { useSettled } from '../components/use-settled.ts'
import { usePartChanges } from './use-part-changes.ts'

/** Quantities as they were typed, by supplier and part; what was not touched is as proposed. */
export type TypedQuantities = Readonly<Record<string, string>>

/** The proposal, what was changed in it, and what is made of it. */
export function useReorder() {
  const queries = useQueryClient()
  const [fillRate, setFillRate] = useState('')
  const [typed, setTyped] = useState<TypedQuantities>({})
  const [initials, setInitials] = useState('')
  const [opened, setOpened] = useState<string | null>(null)
  const changes = usePartChanges()
  const share = readShare(fillRate)
  const aim = useSettled(share === undefined ? {} : { fillRate: share }, settledMilliseconds)
  const proposal = useQuery({
    queryKey: ['proposal.make-proposal', aim],
    queryFn: () => ask('proposal.make-proposal', aim),
    // Stock and what is on order change under it, and making it anew takes a while: a person says when.
    staleTime: Number.POSITIVE_INFINITY,
    placeholderData: before => before,
  })
  const settings = useQuery({
    queryKey: ['proposal.read-settings'],
    queryFn: () => ask('proposal.read-settings', {}),
  })
  const forgetTyped = () => setTyped({})
  const makeAnew = async () => {
    forgetTyped()
    await queries.invalidateQueries({ queryKey: ['proposal.make-proposal'] })
    await queries.invalidateQueries({ queryKey: ['order-sheets.list-sheets'] })
  }
  const anew = useMutation({
    mutationFn: (work: () => Promise<unknown>) => work(),
    networkMode: 'always',
    onSuccess: makeAnew,
  })
  const change = useMutation({
    mutationFn: (changed: { budget?: string | null; usesPatternStock?: boolean }) =>
      ask('proposal.change-settings', changed),
    networkMode: 'always',
    onSuccess: async saved => {
      queries.setQueryData(['proposal.read-settings'], saved)
      await makeAnew()
    },
  })
  return {
    ...{ fillRate, setFillRate, typed, initials, setInitials, opened, setOpened },
    ...{ aim, proposal, settings, change, changes, makeAnew, forgetTyped },
    /** The fill rate that was tried is the shop's from now on. */
    keepFillRate: () => {
      if (share === undefined) return
      anew.mutate(async () => {
        await ask('reorder.change-settings', { fillRate: share })
        setFillRate('')
      })
    },
    isShareReadable: fillRate.trim() === '' || share !== undefined,
    type: (supplier: string, partNumber: string, quantity: string) =>
      setTyped(before => ({ ...before, [keyOf(supplier, partNumber)]: quantity })),
  }
}

export type Reorder = ReturnType<typeof useReorder>

const settledMilliseconds = 400

/** A percentage as a person writes it. */
function readShare(text: string): number | undefined {
  const percent = Number(text.trim().replace(',', '.').replace(/\s*%$/, ''))
  return text.trim() !== '' && percent >= 50 && percent <= 99.9 ? percent / 100 : undefined
}

function keyOf(supplier: string, partNumber: string): string {
  return `${supplier}\n${partNumber}`
}

/** What stands in a line's field. */
export function quantityText(
  typed: TypedQuantities,
  supplier: string,
  line: ProposedOrder['lines'][number],
): string {
  return typed[keyOf(supplier, line.partNumber)] ?? String(line.quantity)
}

export interface WantedLine {
  readonly part: string
  readonly quantity: number
}

/** The lines that are to be ordered: those of nought pieces are not, nor those whose field says no number. */
export function wantedLines({ supplier, lines }: ProposedOrder, typed: TypedQuantities): WantedLine[] {
  return lines.flatMap(line => {
    const quantity = readQuantity(quantityText(typed, supplier, line))
    return quantity === undefined || quantity === 0 ? [] : [{ part: line.partNumber, quantity }]
  })
}

/** The parts of which the field says no number. */
export function unreadableLines({ supplier, lines }: ProposedOrder, typed: TypedQuantities): string[] {
  return lines
    .filter(line => readQuantity(quantityText(typed, supplier, line)) === undefined)
    .map(({ partNumber }) => partNumber)
}

export function readQuantity(text: string): number | undefined {
  return /^\d{1,6}$/.test(text.trim()) ? Number(text) : undefined
}

/** What one supplier's order comes to as it stands, asked anew a moment after the last key. */
export function useWeighedOrder(order: ProposedOrder, typed: TypedQuantities) {
  const lines = useSettled(wantedLines(order, typed), 250)
  return useQuery({
    queryKey: ['proposal.weigh-order', order.supplier, lines],
    queryFn: (): Promise<WeighedOrder> => ask('proposal.weigh-order', { supplier: order.supplier, lines }),
    placeholderData: before => before,
    staleTime: 0,
  })
}
