import type { CheckedInput } from '../../../shared-schemas/index.ts'
import type { LayoutProposal, Shape } from '../../../shared-schemas/supplier-layouts.ts'
import { Refusal } from '../../requests/refusal.ts'
import { catalogueFiles } from '../files/all-files.ts'
import type { CatalogueFile } from '../loading/catalogue-file.ts'
import { kindOfColumn } from './column-kinds.ts'
import { guessShape, type Sampled } from './guess-shape.ts'
import { guessDateOrder, guessSigns } from './guess-signs.ts'
import { listWideHeadings } from './layout-queries.ts'
import { type HeadingMatch, matchHeadings } from './match-headings.ts'
import { fillReading, readHead } from './read-head.ts'

const rowsLookedAt = 200
const samplesShown = 5

/** Which heading may be which column of ours, and what its cells look like. Nothing is applied: a person confirms it. */
export async function proposeLayout(
  asked: CheckedInput<'catalogue.propose-layout'>,
): Promise<LayoutProposal> {
  const { settled, headings, rows } = await readHead(asked.path, {
    reading: asked.reading,
    rows: rowsLookedAt,
  })
  const targets = rankTargets(headings)
  const feeds = asked.feeds ?? targets[0]?.file ?? ''
  const file = catalogueFiles.find(({ name }) => name === feeds)
  if (file === undefined)
    throw new Refusal({
      code: 'file-not-of-catalogue',
      file: feeds,
      known: catalogueFiles.map(({ name }) => name),
    })
  const matches = matchHeadings(file.columns, headings)
  const sampled = headings.map((heading, at) => ({
    heading,
    samples: rows.map(({ cells }) => cells[at]?.trim() ?? '').filter(cell => cell !== ''),
  }))
  const shape = proposeShape(file, { matches, sampled })
  const columns = matches.map(match => describe(file, { match, sampled }))
  const used = [...matches.map(({ heading }) => heading), ...listWideHeadings(shape)]
  return {
    feeds,
    targets,
    columns,
    unmatched: headings.filter(heading => !used.includes(heading)),
    shape,
    reading: fillReading(asked.reading, settled),
    headings: [...headings],
  }
}

/** A supplier's list seldom has these in a column: they are said once for all its rows. */
const saidOnce: ReadonlySet<string> = new Set([
  'says',
  'source',
  'supplier',
  'brand',
  'kind',
  'way',
  'currency',
])

/** Our files by how many of their columns the headings name; what is missing and not said once counts against one. */
function rankTargets(headings: readonly string[]): LayoutProposal['targets'] {
  return catalogueFiles
    .map(({ name, columns, neededColumns }) => {
      const matched = matchHeadings(columns, headings).filter(({ heading }) => heading !== null)
      const found = matched.map(({ column }) => column)
      return {
        file: name,
        matched: matched.length,
        missing: neededColumns.filter(column => !found.includes(column)),
      }
    })
    .sort((one, other) => scoreOf(other) - scoreOf(one))
}

function scoreOf({ matched, missing }: LayoutProposal['targets'][number]): number {
  return matched - missing.filter(column => !saidOnce.has(column)).length
}

interface Seen {
  readonly matches: readonly HeadingMatch[]
  readonly sampled: readonly Sampled[]
}

function proposeShape(file: CatalogueFile, { matches, sampled }: Seen): Shape {
  const models = matches.find(({ column }) => column === 'model_number')
  return file.name === 'fitments.csv' && models !== undefined
    ? guessShape(sampled, models.heading)
    : { kind: 'long' }
}

function describe(
  file: CatalogueFile,
  { match, sampled }: { readonly match: HeadingMatch; readonly sampled: readonly Sampled[] },
): LayoutProposal['columns'][number] {
  const samples = sampled.find(({ heading }) => heading === match.heading)?.samples ?? []
  const kind = kindOfColumn(file.name, match.column)
  return {
    ...match,
    needed: file.neededColumns.includes(match.column),
    holds: kind.holds,
    takes: kind.holds === 'words' ? [...kind.takes] : [],
    ...(kind.holds === 'number' ? guessSigns(samples) : { decimalSign: null, thousands: false }),
    dateOrder: kind.holds === 'date' ? guessDateOrder(samples) : null,
    samples: samples.slice(0, samplesShown),
  }
}
