import { mkdtemp, open, readFile, rename, rm } from 'node:fs/promises'
import path from 'node:path'
import { Refusal } from '../../requests/refusal.ts'
import { refusing } from '../reading/refuse-unreadable.ts'
import type { RejectedAsItStood } from './rejects.ts'

const firstColumns = ['file', 'line', 'column', 'reason']

/**
 * Refuses, before anything is loaded, a place where the rejected rows could not be written, or where some other file
 * stands. One that an earlier load wrote may be written anew.
 */
export async function checkRejectsFile(file: string): Promise<void> {
  const folder = path.dirname(file)
  const probe = await refusing(file, () => mkdtemp(path.join(folder, '.tallyplate-')))
  await rm(probe, { recursive: true })
  const present = await readFile(file, 'utf8').catch(() => undefined)
  if (present !== undefined && !present.startsWith(`${firstColumns.join(',')}`))
    throw new Refusal({ code: 'file-exists', file })
}

/** Writes the rejected rows as they stood, with where and why before them: whole, or not at all. */
export async function writeRejects(file: string, rejected: readonly RejectedAsItStood[]): Promise<void> {
  const unfinished = `${file}.part`
  try {
    const handle = await refusing(file, () => open(unfinished, 'w'))
    try {
      await handle.writeFile(formatRejects(rejected))
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

/** Every line has as many cells, as RFC 4180 asks, whatever file its row came from. */
export function formatRejects(rejected: readonly RejectedAsItStood[]): string {
  const widest = Math.max(0, ...rejected.map(({ cells }) => cells.length))
  const header = [...firstColumns, ...Array.from({ length: widest }, (_, at) => `cell_${at + 1}`)]
  const rows = rejected.map(({ file, line, column, reason, cells }) => [
    file,
    String(line),
    column,
    reason,
    ...Array.from({ length: widest }, (_, at) => cells[at] ?? ''),
  ])
  return [header, ...rows].map(row => `${row.map(formatCell).join(',')}\r\n`).join('')
}

/** A cell that a spreadsheet would run as a formula is shown as text. */
function formatCell(cell: string): string {
  const harmless = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless
}
