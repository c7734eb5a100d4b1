import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useRef, useState } from 'react'
import { ask } from '../bridge/client.ts'
import type { FoundPart } from '../scanning/use-scanned.ts'
import { type ArrivalDraft, countScan, listArrivals, nothingCame, wordBooked } from './arrival-draft.ts'

/** A part that came and is on no line of the sheet: for which line it stands is still to be said. */
export interface Stranger {
  readonly partNumber: string
  readonly description: string
  readonly pieces: number
}

/** The sheet that a delivery is received against, what came of it so far, and the last scans. */
export function useGoodsIn() {
  const queries = useQueryClient()
  const [number, setNumber] = useState<string | null>(null)
  const [draft, setDraft] = useState<ArrivalDraft>(nothingCame)
  const [condition, setCondition] = useState<'good' | 'damaged'>('good')
  const [stranger, setStranger] = useState<Stranger | null>(null)
  const [deliveryNote, setDeliveryNote] = useState('')
  const [to, setTo] = useState('')
  const [initials, setInitials] = useState('')
  const [said, setSaid] = useState('')
  const before = useRef<ArrivalDraft[]>([])
  const current = useRef(draft)
  const change = (next: ArrivalDraft) => {
    before.current.push(current.current)
    current.current = next
    setDraft(next)
  }

  const awaited = useQuery({
    queryKey: ['stock', 'awaited-sheets'],
    queryFn: () => ask('order-sheets.list-sheets', { states: ['sent', 'part-received'] }),
    staleTime: 0,
  })
  const summary = useQuery({
    queryKey: ['catalogue.read-summary'],
    queryFn: () => ask('catalogue.read-summary', {}),
    staleTime: Number.POSITIVE_INFINITY,
  })
  const readSheet = (of: string) => ({
    queryKey: ['stock', 'order-sheet', of],
    queryFn: async () => ({
      ...(await ask('order-sheets.read-sheet', { number: of })),
      ...(await ask('goods-in.read-deliveries', { number: of })),
    }),
    staleTime: 0,
  })
  const opened = useQuery({ ...readSheet(number ?? ''), enabled: number !== null })
  const signed = initials.trim() === '' ? {} : { initials }
  const refresh = async () => {
    setSaid('')
    await queries.invalidateQueries({ queryKey: ['stock'] })
    await queries.invalidateQueries({ queryKey: ['order-sheets.list-sheets'] })
  }
  const begin = () => {
    before.current = []
    current.current = nothingCame
    setDraft(nothingCame)
    setStranger(null)
    setCondition('good')
    setDeliveryNote('')
  }

  return {
    ...{ number, draft, condition, stranger, deliveryNote, to, initials, said, awaited, opened, signed },
    ...{ change, setCondition, setStranger, setDeliveryNote, setTo, setInitials, refresh },
    locations: summary.data?.locations ?? [],
    /** Opens a sheet; what was counted against another is left. */
    open: async (typed: string) => {
      const { sheet } = await queries.fetchQuery(readSheet(typed.trim()))
      if (sheet.number !== number) begin()
      setNumber(sheet.number)
      setSaid('')
      return `Order sheet ${sheet.number} from ${sheet.supplierName || sheet.supplier}.`
    },
    count: ({ partNumber, pieces, description }: FoundPart): string => {
      const lines = opened.data?.sheet.lines
      if (lines === undefined) throw new Error(`Open the order sheet first, then scan ${partNumber} again.`)
      const found = countScan(current.current, lines, { partNumber, pieces, condition })
      if (found === undefined) {
        setStranger({ partNumber, pieces, description })
        // Heard as refused, so that whoever scans looks up.
        throw new Error(`${partNumber} is on no line of ${number}. Say for which line it came.`)
      }
      change(found.draft)
      return `Line ${found.line.line}, ${partNumber}: ${found.counted}${condition === 'damaged' ? ' damaged' : ''}.`
    },
    takeBack: (): string => {
      const last = before.current.pop()
      if (last === undefined) throw new Error('Nothing counted here is left to take back.')
      current.current = last
      setDraft(last)
      return 'Taken back.'
    },
    book: async () => {
      if (number === null) throw new Error('Open the order sheet first.')
      const arrivals = listArrivals(current.current)
      const { sheet } = await ask('goods-in.receive-goods', {
        ...{ number, deliveryNote, arrivals, ...signed },
        ...(to === '' ? {} : { to }),
      })
      begin()
      await refresh()
      setSaid(wordBooked(sheet))
    },
  }
}

export type GoodsIn = ReturnType<typeof useGoodsIn>
