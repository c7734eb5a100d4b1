import path from 'node:path'
import type { LoadReport, RejectedRow } from '../../../shared-schemas/catalogue.ts'
import { wordLeftOut } from '../../../shared-schemas/word-left-out.ts'
import { wordRowChange } from '../../../shared-schemas/word-row-change.ts'
import { alignColumns } from './align-columns.ts'
import type { Command } from './command.ts'
import { givenEncoding } from './given-encoding.ts'
import { present, wholeNumber } from './options.ts'

export const load: Command = {
  name: 'load',
  words: '<folder or file>',
  leastWords: 1,
  mostWords: 1,
  does: 'loads catalogue files, all sound rows or none, and names each rejected row',
  options: {
    'dry-run': { does: 'report what would change and change nothing' },
    strict: { does: 'load nothing when any row is rejected' },
    edition: { does: 'what suppliers and sources named here said before and say no more is retired' },
    initials: { value: 'initials', does: 'who loads' },
    changes: { value: 'number', does: 'show so many of the rows that changed, before and after' },
    layout: { value: 'name', does: 'read one file of a supplier, matched as the layout of this name says' },
    encoding: { value: 'encoding', does: 'read the file so this once, whatever its layout says' },
    rejects: {
      value: 'file.csv',
      does: 'write the rejected rows here, to be mended and loaded again; of a folder, name a folder for a file each',
    },
  },
  shop: 'may-make',
  async run(given, { ask }) {
    const rejectsFile = given.text('rejects')
    const report = await ask('catalogue.load-files', {
      path: path.resolve(given.words[0] ?? ''),
      dryRun: given.has('dry-run'),
      strict: given.has('strict'),
      edition: given.has('edition'),
      showChanges: wholeNumber(given, 'changes') ?? 0,
      ...present(given, ['initials', 'layout']),
      ...givenEncoding(given),
      ...(rejectsFile === undefined ? {} : { rejectsFile: path.resolve(rejectsFile) }),
    })
    return {
      value: report,
      text: writeReport(report, rejectsFile),
      needsPerson: report.rejected.length + report.leftOut.length > 0,
    }
  },
}

function writeReport(report: LoadReport, rejectsFile: string | undefined): string {
  const { files, rejected, changes } = report
  const table = alignColumns(
    [
      ['file', 'added', 'changed', 'unchanged', 'retired', 'rejected'],
      ...files.map(file => [
        file.file,
        ...[file.added, file.changed, file.unchanged, file.retired, file.rejected].map(count =>
          count.toLocaleString('en'),
        ),
      ]),
    ],
    [1, 2, 3, 4, 5],
  )
  const told = [
    ...writeLeftOut(report.leftOut),
    ...writeChanges(changes),
    ...writeRejected(rejected, rejectsFile),
  ]
  return [...table, ...told, '', conclude(report)].join('\n')
}

function writeLeftOut(leftOut: readonly string[]): string[] {
  return leftOut.length === 0 ? [] : ['', wordLeftOut(leftOut)]
}

function writeChanges(changes: LoadReport['changes']): string[] {
  return changes.length === 0 ? [] : ['', 'Changes:', ...changes.map(change => `  ${wordRowChange(change)}`)]
}

const mostShown = 20

function writeRejected(rejected: readonly RejectedRow[], rejectsFile: string | undefined): string[] {
  if (rejected.length === 0) return []
  const shown = rejected
    .slice(0, mostShown)
    .map(
      ({ file, line, column, reason, mend }) =>
        `  ${file}, line ${line}${column && `, ${column}`}: ${reason}${mend === null ? '' : ` (${mend}?)`}`,
    )
  const more = rejected.length - shown.length
  const elsewhere =
    rejectsFile === undefined ? 'Name a file with --rejects to have them all.' : `All are in ${rejectsFile}.`
  return ['', 'Rejected:', ...shown, ...(more > 0 ? [`  and ${more} more. ${elsewhere}`] : [])]
}

function conclude({ files, rejected, dryRun }: LoadReport): string {
  const touched = files.reduce((sum, file) => sum + file.added + file.changed + file.retired, 0)
  const left = rejected.length === 0 ? '' : ` ${rejected.length} rejected: mend them and load again.`
  if (touched === 0) return `Nothing to change: the shop holds all of this already.${left}`
  return dryRun
    ? `Dry run: ${touched.toLocaleString('en')} rows would be added or changed; nothing was.${left}`
    : `Done: ${touched.toLocaleString('en')} rows added or changed.${left}`
}
