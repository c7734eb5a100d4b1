import { writeFileSync } from 'node:fs'
import path from 'node:path'
import {
  type FilePreview,
  type LayoutProposal,
  layout,
  type SavedLayout,
} from '../../../shared-schemas/supplier-layouts.ts'
import { Refusal } from '../../requests/refusal.ts'
import { wordFileError } from '../../requests/word-file-error.ts'
import { alignColumns } from './align-columns.ts'
import type { Answer, Command, Desk, Given } from './command.ts'
import { givenEncoding } from './given-encoding.ts'
import { needed, present, wholeNumber } from './options.ts'
import { readJsonFile } from './read-json-file.ts'
import { WrongUse } from './wrong-use.ts'

const tasks = ['preview', 'propose', 'save', 'remove', 'rename'] as const

export const layouts: Command = {
  name: 'layouts',
  words: '[preview <file> | propose <file> | save <layout.json> | remove <name> | rename <name> --to <name>]',
  leastWords: 0,
  mostWords: 2,
  does: "lists how suppliers' files are matched, shows the beginning of one, or proposes a match to be saved",
  options: {
    encoding: { value: 'encoding', does: 'show it as it reads in this one; else as it most likely is' },
    sheet: { value: 'sheet', does: 'which sheet of a workbook; the only visible one unless told' },
    'header-row': { value: 'number', does: 'which row has the headings; the first unless told' },
    feeds: { value: 'file.csv', does: 'propose a match for this catalogue file; the nearest unless told' },
    draft: {
      value: 'layout.json',
      does: 'write the proposal here as a layout, for you to complete and save',
    },
    replace: { does: 'save it in the place of a layout of the same name' },
    initials: { value: 'initials', does: 'who saves it' },
    to: { value: 'name', does: 'the new name' },
  },
  shop: 'must-exist',
  async run(given, desk) {
    const [task, word] = given.words
    if (task === undefined) return listLayouts(desk)
    if (!(tasks as readonly string[]).includes(task))
      throw new WrongUse(`layouts takes ${tasks.join(', ')}, or nothing to list them; not “${task}”.`)
    if (word === undefined) throw new WrongUse(`layouts ${task} needs more. See tallyplate layouts --help.`)
    return await work[task as (typeof tasks)[number]](word, given, desk)
  },
}

type Work = (word: string, given: Given, desk: Desk) => Promise<Answer>

const work: Readonly<Record<(typeof tasks)[number], Work>> = {
  async preview(file, given, { ask }) {
    const preview = await ask('catalogue.preview-file', {
      path: path.resolve(file),
      reading: givenReading(given),
    })
    return { value: preview, text: writePreview(preview), needsPerson: false }
  },
  async propose(file, given, { ask }) {
    const proposal = await ask('catalogue.propose-layout', {
      path: path.resolve(file),
      reading: givenReading(given),
      ...present(given, ['feeds']),
    })
    const draft = given.text('draft')
    if (draft !== undefined) writeDraft(draft, { name: path.parse(file).name, proposal })
    return { value: proposal, text: writeProposal(proposal, draft), needsPerson: false }
  },
  async save(file, given, { ask }) {
    const saved = await ask('catalogue.save-layout', {
      layout: readJsonFile(layout, file),
      replace: given.has('replace'),
      ...present(given, ['initials']),
    })
    const text = `Saved: ${wordLayout(saved.layout)}. Load with it: tallyplate load --layout "${saved.layout.name}" <file>`
    return { value: saved, text, needsPerson: false }
  },
  async remove(name, _given, { ask }) {
    const value = await ask('catalogue.remove-layout', { name })
    return { value, text: `Removed: ${wordLayout(value.removed)}.`, needsPerson: false }
  },
  async rename(name, given, { ask }) {
    const value = await ask('catalogue.rename-layout', { name, newName: needed(given, 'to', 'layouts') })
    return { value, text: `Renamed: ${wordLayout(value.layout)}.`, needsPerson: false }
  },
}

async function listLayouts({ ask }: Desk): Promise<Answer> {
  const value = await ask('catalogue.list-layouts', {})
  const text =
    value.layouts.map(wordLayout).join('\n') ||
    'No layout is saved yet. Begin with: tallyplate layouts propose <file>'
  return { value, text, needsPerson: false }
}

function givenReading(given: Given) {
  const headerRow = wholeNumber(given, 'header-row')
  return {
    ...present(given, ['sheet']),
    ...givenEncoding(given),
    ...(headerRow === undefined ? {} : { headerRow }),
  }
}

function wordLayout({ name, feeds, shape, columns }: SavedLayout): string {
  const wide = shape.kind === 'long' ? '' : `, many models a row`
  return `${name}: for ${feeds}, ${columns.length} columns matched${wide}`
}

function writePreview({ file, encoding, separator, sheets, headings, rows, layouts }: FilePreview): string {
  const found = [
    ...(encoding === null ? [] : [`Encoding ${encoding.encoding}: ${encoding.certainty}, ${encoding.why}.`]),
    ...(separator === null
      ? []
      : [`Separator “${separator.separator}”: ${separator.certainty}, ${separator.why}.`]),
    ...sheets.map(({ name, hidden }) => `Sheet ${name}${hidden ? ' (hidden)' : ''}`),
    `Layouts that fit: ${layouts.join(', ') || 'none'}.`,
  ]
  const table = alignColumns([
    ['line', ...headings],
    ...rows.map(({ line, cells }) => [String(line), ...cells.map(onOneLine)]),
  ])
  return [`${file}`, ...found, '', ...table].join('\n')
}

/** What a row needs and no heading was found for stands there empty: the same text for all rows may be written in. */
function writeDraft(
  file: string,
  { name, proposal }: { readonly name: string; readonly proposal: LayoutProposal },
): void {
  const { feeds, reading, headings, columns, shape } = proposal
  const wide = shape.kind === 'long' ? undefined : shape.column
  const matched = columns
    .filter(({ column, needed, heading }) => column !== wide && (needed || heading !== null))
    .map(({ column, heading, decimalSign, thousands, dateOrder }) =>
      heading === null
        ? { column, constant: '' }
        : { column, heading, decimalSign, thousands, dateOrder, words: [] },
    )
  const draft = { name, feeds, reading, headings, columns: matched, shape }
  try {
    writeFileSync(file, `${JSON.stringify(draft, null, 2)}\n`, { flag: 'wx' })
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'EEXIST') throw new Refusal({ code: 'file-exists', file })
    throw new Refusal({ code: 'file-unreadable', file, why: wordFileError(thrown) })
  }
}

function writeProposal(
  { feeds, columns, unmatched, shape }: LayoutProposal,
  draft: string | undefined,
): string {
  const table = alignColumns([
    [feeds, 'heading', 'how sure', 'as in'],
    ...columns.map(({ column, needed, heading, certainty, samples }) => [
      needed ? `${column} (needed)` : column,
      heading ?? '-',
      heading === null ? '' : certainty,
      samples[0] ?? '',
    ]),
  ])
  const rest = unmatched.length === 0 ? [] : ['', `Not matched: ${unmatched.join(', ')}`]
  const wide = shape.kind === 'long' ? [] : ['', `Many models a row, to be split (${shape.kind}).`]
  return [
    ...table,
    ...rest,
    ...wide,
    '',
    draft === undefined
      ? 'Nothing is kept. --draft writes this as a layout, for you to complete and save.'
      : `Written to ${draft}: complete it, then tallyplate layouts save ${draft}`,
  ].join('\n')
}

function onOneLine(cell: string): string {
  return cell.replaceAll('\n', ' ')
}
