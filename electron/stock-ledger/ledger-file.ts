import { open, readFile, rename, rm } from 'node:fs/promises'
import { z } from 'zod'
import { movement, outsidePlace } from '../../shared-schemas/stock-ledger.ts'
import { Refusal } from '../requests/refusal.ts'
import { joinedValues } from './joined-tables.ts'

/** Version 1 had movements and reservations alone, and is still taken in. */
const header = z.object({
  tallyplateLedger: z.union([z.literal(1), z.literal(2)]),
  device: z.string(),
  writtenAt: z.string(),
})

/** A movement by names that mean the same on every machine: row ids differ from file to file. */
export const movementLine = movement.omit({ from: true, to: true, reversedBy: true }).extend({
  line: z.literal('movement'),
  from: z.string().nullable(),
  to: z.string().nullable(),
  outside: outsidePlace.nullable(),
})
export type MovementLine = z.infer<typeof movementLine>

export const reservationLine = z.object({
  line: z.literal('reservation'),
  reservationId: z.string().length(36),
  partNumber: z.string(),
  location: z.string(),
  quantity: z.int().positive(),
  heldFor: z.enum(['job', 'customer']),
  reference: z.string().min(1),
  recordedAt: z.string(),
  device: z.string(),
  initials: z.string(),
})
export type ReservationLine = z.infer<typeof reservationLine>

export const reservationEndLine = z.object({
  line: z.literal('reservation-end'),
  reservationId: z.string().length(36),
  how: z.enum(['taken', 'released']),
  recordedAt: z.string(),
  device: z.string(),
  initials: z.string(),
})
export type ReservationEndLine = z.infer<typeof reservationEndLine>

/** A row of one of the joined tables. */
export const recordLine = z.object({
  line: z.literal('record'),
  table: z.string(),
  values: joinedValues,
})
export type RecordLine = z.infer<typeof recordLine>

const ledgerLine = z.discriminatedUnion('line', [
  movementLine,
  reservationLine,
  reservationEndLine,
  recordLine,
])
export type LedgerLine = z.infer<typeof ledgerLine>

/** Writes a ledger file, one JSON object a line: whole, or not at all. */
export async function writeLedgerFile(
  file: string,
  { device, writtenAt }: { readonly device: string; readonly writtenAt: string },
  lines: Iterable<LedgerLine>,
): Promise<void> {
  const unfinished = `${file}.part`
  try {
    const handle = await refusing(file, () => open(unfinished, 'w'))
    try {
      await handle.write(`${JSON.stringify({ tallyplateLedger: 2, device, writtenAt })}\n`)
      let piece = ''
      for (const line of lines) {
        piece += `${JSON.stringify(line)}\n`
        if (piece.length < pieceLength) continue
        await handle.write(piece)
        piece = ''
      }
      await handle.write(piece)
      await handle.sync()
    } finally {
      await handle.close()
    }
    await refusing(file, () => rename(unfinished, file))
  } catch (thrown) {
    await rm(unfinished, { force: true })
    throw thrown
  }
}

const pieceLength = 1024 * 1024

/** Every line of a ledger file. A file that is cut off, or not ours, is refused with the line that shows it. */
export async function readLedgerFile(file: string): Promise<LedgerLine[]> {
  const text = await refusing(file, () => readFile(file, 'utf8'))
  if (!text.endsWith('\n')) throw unreadable(file, 'its last line is cut off; copy it again')
  const [first = '', ...rest] = text.slice(0, -1).split('\n')
  if (!header.safeParse(parse(first)).success)
    throw unreadable(file, 'it is no ledger of Tallyplate; name the file that the van wrote')
  return rest.map((line, at) => {
    const read = ledgerLine.safeParse(parse(line))
    if (!read.success) throw unreadable(file, `line ${at + 2} is damaged; copy it again`)
    return read.data
  })
}

function parse(line: string): unknown {
  try {
    return JSON.parse(line)
  } catch {
    return undefined
  }
}

function unreadable(file: string, why: string): Refusal {
  return new Refusal({ code: 'file-unreadable', file, why })
}

async function refusing<Value>(file: string, act: () => Promise<Value>): Promise<Value> {
  try {
    return await act()
  } catch (thrown) {
    if (thrown instanceof Error && 'code' in thrown) throw unreadable(file, String(thrown.code))
    throw thrown
  }
}
