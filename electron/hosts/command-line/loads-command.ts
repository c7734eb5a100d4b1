import type { LoadEntry } from '../../../shared-schemas/load-log.ts'
import { wordRowChange } from '../../../shared-schemas/word-row-change.ts'
import { alignColumns } from './align-columns.ts'
import type { Answer, Command, Desk, Given } from './command.ts'
import { needed, wholeNumber } from './options.ts'
import { WrongUse } from './wrong-use.ts'

export const loads: Command = {
  name: 'loads',
  words: '[number of a load]',
  leastWords: 0,
  mostWords: 1,
  does: 'lists the loads, shows what one changed, or undoes it as a whole',
  options: {
    undo: { does: 'take back everything that this load changed' },
    reason: { value: 'words', does: 'why it is undone' },
    initials: { value: 'initials', does: 'who undoes it' },
    changes: { value: 'number', does: 'how many of its rows to show; otherwise 200' },
  },
  shop: 'must-exist',
  async run(given, desk) {
    const [word] = given.words
    if (word === undefined) return listAll(desk)
    if (!/^\d{1,9}$/.test(word)) throw new WrongUse(`loads takes the number of a load; “${word}” is none.`)
    return given.has('undo') ? undoOne(Number(word), given, desk) : showOne(Number(word), given, desk)
  },
}

async function listAll({ ask }: Desk): Promise<Answer> {
  const value = await ask('catalogue.list-loads', {})
  const rows = value.loads.map(load => [
    String(load.loadRunId),
    load.at,
    load.initials || '–',
    wordLoad(load),
  ])
  const text = rows.length === 0 ? 'Nothing was loaded yet.' : alignColumns(rows, [0]).join('\n')
  return { value, text, needsPerson: false }
}

function wordLoad({ path, layout, files, undoes, undoneBy, reason }: LoadEntry): string {
  if (undoes !== null) return `undid load ${undoes}: ${reason}`
  const counted = (count: 'added' | 'changed' | 'retired' | 'rejected') =>
    `${files.reduce((sum, file) => sum + file[count], 0).toLocaleString('en')} ${count}`
  const counts = (['added', 'changed', 'retired', 'rejected'] as const).map(counted).join(', ')
  const by = layout === null ? '' : ` by “${layout}”`
  return `${path}${by}: ${counts}${undoneBy === null ? '' : `; undone by ${undoneBy}`}`
}

async function showOne(loadRunId: number, given: Given, { ask }: Desk): Promise<Answer> {
  const most = wholeNumber(given, 'changes')
  const value = await ask('catalogue.read-load', { loadRunId, ...(most === undefined ? {} : { most }) })
  const more = value.rows - value.changes.length
  const lines = [
    ...value.changes.map(wordRowChange),
    ...(more > 0 ? [`and ${more.toLocaleString('en')} more`] : []),
  ]
  return { value, text: lines.join('\n') || 'It changed fitments only.', needsPerson: false }
}

async function undoOne(loadRunId: number, given: Given, { ask }: Desk): Promise<Answer> {
  const [reason, initials] = [
    needed(given, 'reason', 'loads --undo'),
    needed(given, 'initials', 'loads --undo'),
  ]
  const value = await ask('catalogue.undo-load', { loadRunId, reason, initials })
  const kept = value.kept.map(({ table, rows }) => `${rows} of ${table.replaceAll('_', ' ')}`)
  const stay = kept.length === 0 ? '' : ` Named by what was recorded since, and so kept: ${kept.join(', ')}.`
  const text = `Done: load ${loadRunId} is undone, ${value.restored.toLocaleString('en')} rows are as before.${stay}`
  return { value, text, needsPerson: false }
}
