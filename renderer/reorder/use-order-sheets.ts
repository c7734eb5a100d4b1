import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { OrderSheet, SheetSummary } from '../../shared-schemas/order-sheets.ts'
import type { Proposal } from '../../shared-schemas/proposal.ts'
import { ask } from '../bridge/client.ts'
import { type TypedQuantities, unreadableLines, wantedLines } from './use-reorder.ts'

/** The order sheets, and what is done with them from here. */
export function useOrderSheets(onMade: () => void) {
  const queries = useQueryClient()
  const [said, setSaid] = useState('')
  const [folder, setFolder] = useState(() => localStorage.getItem(folderKey) ?? '')
  const sheets = useQuery({
    queryKey: ['order-sheets.list-sheets'],
    queryFn: () => ask('order-sheets.list-sheets', {}),
    staleTime: 0,
  })
  const act = useMutation({
    mutationFn: (work: () => Promise<string>) => work(),
    networkMode: 'always',
    onSuccess: async words => {
      setSaid(words)
      await queries.invalidateQueries({ queryKey: ['order-sheets.list-sheets'] })
      await queries.invalidateQueries({ queryKey: ['proposal.make-proposal'] })
    },
    onError: error => setSaid(error.message),
  })
  return {
    ...{ sheets, said, folder, isBusy: act.isPending, hasFailed: act.isError },
    keepFolder(path: string) {
      setFolder(path)
      localStorage.setItem(folderKey, path)
    },
    make: (orders: Proposal['orders'], typed: TypedQuantities, initials: string) =>
      act.mutate(async () => {
        const words = await makeSheets(orders, typed, signedBy(initials))
        onMade()
        return words
      }),
    check: ({ number }: SheetSummary, initials: string) =>
      act.mutate(async () => {
        const { sheet, checked } = await ask('order-sheets.check-sheet', { number, ...signedBy(initials) })
        return wordChecked(sheet, checked.stops)
      }),
    send: ({ number }: SheetSummary, initials: string) =>
      act.mutate(async () => {
        const written = await writeFiles(number, folder)
        await ask('order-sheets.send-sheet', { number, ...signedBy(initials) })
        return `${number} is sent. Its files are in ${written.folder}.`
      }),
    exportAgain: ({ number }: SheetSummary) =>
      act.mutate(async () => {
        const written = await writeFiles(number, folder)
        return `The files of ${number} are in ${written.folder}.`
      }),
    cancel: ({ number }: SheetSummary, initials: string) =>
      act.mutate(async () => {
        await ask('order-sheets.cancel-sheet', {
          ...{ number, reason: 'cancelled on the reorder screen' },
          ...signedBy(initials),
        })
        return `${number} is cancelled. Its number stays its own.`
      }),
  }
}

export type OrderSheets = ReturnType<typeof useOrderSheets>

const folderKey = 'tallyplate.order-folder'

function signedBy(initials: string) {
  return initials.trim() === '' ? {} : { initials: initials.trim() }
}

function writeFiles(number: string, folder: string) {
  if (folder.trim() === '') throw new Error('Name the folder for the suppliers’ files first.')
  return ask('order-sheets.export-sheets', { numbers: [number], folder })
}

/** A sheet per supplier of whatever is to be ordered, checked at once. With a stop left on any, none is made. */
async function makeSheets(
  orders: Proposal['orders'],
  typed: TypedQuantities,
  who: { readonly initials?: string },
): Promise<string> {
  const unreadable = orders.flatMap(order => unreadableLines(order, typed))
  if (unreadable.length > 0)
    throw new Error(`Write a whole number of pieces of ${unreadable.join(', ')}; 0 leaves a line out.`)
  const wanted = orders
    .map(order => ({ supplier: order.supplier, lines: wantedLines(order, typed) }))
    .filter(({ lines }) => lines.length > 0)
  if (wanted.length === 0) return 'Nothing is to be ordered.'
  for (const order of wanted) {
    const { stops } = await ask('proposal.weigh-order', order)
    if (stops > 0)
      throw new Error(
        `${order.supplier} has ${stops} ${stops === 1 ? 'stop' : 'stops'} to settle first. F2 goes to the next; 0 pieces leave a line out.`,
      )
  }
  const { sheets } = await ask('order-sheets.draft-sheets', { sheets: wanted, ...who })
  const said: string[] = []
  for (const { number } of sheets) {
    const { sheet, checked } = await ask('order-sheets.check-sheet', { number, ...who })
    said.push(wordChecked(sheet, checked.stops))
  }
  return said.join(' ')
}

function wordChecked({ number, supplier }: OrderSheet, stops: number): string {
  return stops === 0
    ? `${number} for ${supplier} is checked.`
    : `${number} for ${supplier} stays a draft: ${stops} ${stops === 1 ? 'stop' : 'stops'} to settle.`
}
