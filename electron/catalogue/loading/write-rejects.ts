import { mkdir, mkdtemp, open, readFile, rename, rm } from 'node:fs/promises'
import path from 'node:path'
import { writeCsv } from '../../../shared-schemas/csv-text.ts'
import { Refusal } from '../../requests/refusal.ts'
import { refusing } from '../reading/refuse-unreadable.ts'
import { reasonColumns, wholeRow } from '../reading/rejects-header.ts'
import type { FileToLoad, OwnHeadings } from './list-files.ts'
import type { RejectedAsItStood } from './rejects.ts'

/** Where rejected rows go: a file for each source, in its own headings, or one list of them all. */
export interface RejectsPlace {
  readonly files: readonly { readonly path: string; readonly source: FileToLoad | undefined }[]
}

const listColumns = ['file', 'line', 'column', 'reason']

/**
 * Settles, before anything is loaded, where the rejected rows will stand. One source is written in its own headings to
 * the file that was named; those of a folder each to a file of its name in a folder, or all to one list, if a `.csv`
 * was named. Refused where they could not be written, or where some other file stands; an earlier one is replaced.
 */
export async function placeRejects(
  target: string,
  { sources, isFolder }: { readonly sources: readonly FileToLoad[]; readonly isFolder: boolean },
): Promise<RejectsPlace> {
  const asFolder = isFolder && !target.toLowerCase().endsWith('.csv')
  const files = asFolder
    ? sources.map(source => ({ path: path.join(target, source.name), source }))
    : [{ path: target, source: isFolder ? undefined : sources[0] }]
  if (asFolder) await refusing(target, () => mkdir(target, { recursive: true }))
  const folder = asFolder ? target : path.dirname(target)
  const probe = await refusing(target, () => mkdtemp(path.join(folder, '.tallyplate-')))
  await rm(probe, { recursive: true })
  for (const file of files) await refuseOtherFile(file.path)
  return { files }
}

async function refuseOtherFile(file: string): Promise<void> {
  const present = await readFile(file, 'utf8').catch(() => undefined)
  if (present === undefined) return
  const [first = ''] = present.replace('\u{feff}', '').split(/\r?\n/, 1)
  const isOurs =
    first.startsWith(listColumns.join(',')) || reasonColumns.every(column => first.includes(column))
  if (!isOurs) throw new Refusal({ code: 'file-exists', file })
}

/** Writes the rejected rows, each file whole or not at all. */
export async function writeRejects(
  { files }: RejectsPlace,
  rejected: readonly RejectedAsItStood[],
): Promise<void> {
  for (const { path: file, source } of files) {
    const own = rejected.filter(row => source === undefined || row.file === source.name)
    await writeWhole(file, source === undefined ? formatList(rejected) : formatOwn(own, source.own))
  }
}

async function writeWhole(file: string, text: string): Promise<void> {
  const unfinished = `${file}.part`
  try {
    const handle = await refusing(file, () => open(unfinished, 'w'))
    try {
      await handle.writeFile(text)
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
export function formatList(rejected: readonly RejectedAsItStood[]): string {
  const widest = Math.max(0, ...rejected.map(({ cells }) => cells.length))
  const header = [...listColumns, ...Array.from({ length: widest }, (_, at) => `cell_${at + 1}`)]
  const rows = rejected.map(({ file, line, column, reason, cells }) => [
    file,
    String(line),
    column,
    reason,
    ...Array.from({ length: widest }, (_, at) => cells[at] ?? ''),
  ])
  return writeCsv([header, ...rows])
}

/**
 * The rows under their own headings, with what is wrong after them: so that they can be mended and loaded again as they
 * are. It begins with the mark of UTF-8, which settles its encoding whatever the source had. A row of which several
 * things were said, as one that names many models, stands once.
 */
export function formatOwn(
  rejected: readonly RejectedAsItStood[],
  { headings, separator }: OwnHeadings,
): string {
  const own = headings()
  const ofLine = [...Map.groupBy(rejected, ({ line }) => line).values()]
  const rows = ofLine.map(told => {
    const [first] = told
    const all = (read: (row: RejectedAsItStood) => string | null) =>
      told.length === 1
        ? (read(told[0] as RejectedAsItStood) ?? '')
        : told.map(row => read(row) ?? '').join(' | ')
    const isMisshapen = told.some(row => row.isMisshapen)
    return [
      ...fillUp(first?.cells ?? [], { width: own.length, separator }),
      String(first?.line ?? ''),
      isMisshapen ? wholeRow : all(row => row.column),
      all(row => row.value),
      all(row => row.reason),
      all(row => row.mend),
    ]
  })
  return `\u{feff}${writeCsv([[...own, ...reasonColumns], ...rows], { separator })}`
}

/** As many cells as there are headings; what is over stands in the last, as it would in a file. */
function fillUp(
  cells: readonly string[],
  { width, separator }: { readonly width: number; readonly separator: string },
): string[] {
  const last = cells.length > width ? [cells.slice(width - 1).join(separator)] : []
  const kept = cells.slice(0, width - last.length)
  return [...kept, ...last, ...Array.from({ length: Math.max(0, width - cells.length) }, () => '')]
}
