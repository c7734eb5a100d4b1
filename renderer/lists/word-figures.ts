import type { LoadedFile } from '../../shared-schemas/catalogue.ts'

const figures = new Intl.NumberFormat('en')

export function wordFigure(value: number): string {
  return figures.format(value)
}

export function wordRows(rows: number): string {
  return `${wordFigure(rows)} ${rows === 1 ? 'row' : 'rows'}`
}

/** As a person reads it in a folder: `812 bytes`, `1.4 MB`. */
export function wordSize(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`
  const [unit, size] = bytes < 1_000_000 ? ['kB', bytes / 1000] : ['MB', bytes / 1_000_000]
  return `${size < 10 ? size.toFixed(1) : wordFigure(Math.round(size))} ${unit}`
}

export type Counts = Omit<LoadedFile, 'file'>

export function addCounts(files: readonly LoadedFile[]): Counts {
  const all = { added: 0, changed: 0, unchanged: 0, retired: 0, rejected: 0 }
  for (const file of files) {
    all.added += file.added
    all.changed += file.changed
    all.unchanged += file.unchanged
    all.retired += file.retired
    all.rejected += file.rejected
  }
  return all
}

/** What a dry run found, or a load did, in one sentence. */
export function wordOutcome(counts: Counts, isTrial: boolean): string {
  const { added, changed, unchanged, retired, rejected } = counts
  const total = added + changed + unchanged + retired + rejected
  if (total === 0) return isTrial ? 'There are no rows in it.' : 'There were no rows in it.'
  const done = isTrial ? ['would be added', 'changed', 'retired'] : ['added', 'changed', 'retired']
  const rest = rejected === 0 ? 'No row is rejected.' : `${wordRows(rejected)} rejected.`
  if (added + changed + retired === 0)
    return `Nothing ${isTrial ? 'would change' : 'was changed'}: ${wordRows(unchanged)} said already. ${rest}`
  const [addedWord, changedWord, retiredWord] = done
  return `${wordRows(added)} ${addedWord}, ${wordFigure(changed)} ${changedWord}, ${wordFigure(retired)} ${retiredWord}; ${wordFigure(unchanged)} said already. ${rest}`
}

/** `about 40 s`, `about 3 min`. */
export function wordSeconds(seconds: number): string {
  if (seconds < 60) return `about ${Math.max(1, Math.round(seconds))} s`
  return `about ${Math.round(seconds / 60)} min`
}

/** The day and minute on this machine's clock. */
export function wordMoment(at: string): string {
  return new Date(at).toLocaleString('sv-SE', { dateStyle: 'short', timeStyle: 'short' })
}
