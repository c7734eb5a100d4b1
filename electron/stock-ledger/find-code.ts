import { gs1CheckDigit } from '../../shared-schemas/gs1-check-digit.ts'
import { readScan, type Scan } from '../../shared-schemas/read-scan.ts'
import type { FoundCode } from '../../shared-schemas/stock-ledger.ts'
import { findPartByNumber, type Part, readPart } from '../catalogue/part-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { listLocations } from './location-queries.ts'
import { findAttached } from './part-code-queries.ts'

/**
 * What a code stands for. What staff attached goes first, then the GTIN, then any number printed on the part, and last
 * a location of that name; a label of the shop itself says what it is.
 */
export function findCode(database: ReadableDatabase, sent: string): FoundCode {
  const scan = readScan(sent)
  switch (scan.kind) {
    case 'undo':
      return { kind: 'undo' }
    case 'misread':
      return scan
    case 'location-label':
      return findLocation(database, scan.location) ?? unknown
    case 'part-label':
      return findNumber(database, scan.part, 1) ?? unknown
    case 'plain':
      return (
        findAttachedPart(database, scan, 1) ??
        findNumber(database, scan.text, 1) ??
        findLocation(database, scan.text) ??
        unknown
      )
    case 'trade-item':
      return findTradeItem(database, scan)
  }
}

const unknown = { kind: 'unknown', packOf: null } as const satisfies FoundCode

/** Under which text a code is kept; undefined for one that no part can be attached to. */
export function attachableCode(scan: Scan): string | undefined {
  if (scan.kind === 'plain') return scan.text
  return scan.kind === 'trade-item' ? (scan.gtin ?? scan.numbers[0]) : undefined
}

function findTradeItem(
  database: ReadableDatabase,
  scan: Extract<Scan, { readonly kind: 'trade-item' }>,
): FoundCode {
  const pieces = scan.pieces ?? 1
  const attached = findAttachedPart(database, scan, pieces)
  if (attached !== undefined) return attached
  const own = scan.gtin === null ? undefined : findGtin(database, scan.gtin)
  if (own !== undefined) return asFound(own, { pieces, by: 'gtin' })
  for (const number of scan.numbers) {
    const found = findNumber(database, number, pieces)
    if (found !== undefined) return found
  }
  return { kind: 'unknown', packOf: scan.gtin === null ? null : findPackContent(database, scan.gtin) }
}

function findAttachedPart(database: ReadableDatabase, scan: Scan, times: number): FoundCode | undefined {
  const code = attachableCode(scan)
  const attached = code === undefined ? undefined : findAttached(database, code)
  if (attached === undefined) return undefined
  return asFound(readPart(database, attached.partId), { pieces: attached.pieces * times, by: 'attached' })
}

function findNumber(database: ReadableDatabase, number: string, pieces: number): FoundCode | undefined {
  const part = findPartByNumber(database, number)
  return part && asFound(part, { pieces, by: 'number' })
}

/** Catalogues write a GTIN with as many digits as the maker printed: the zeros before it are left out one by one. */
function findGtin(database: ReadableDatabase, gtin: string): Part | undefined {
  const forms = [14, 13, 12, 8].map(length => gtin.slice(-length))
  return forms
    .filter(form => /^0*$/.test(gtin.slice(0, -form.length)))
    .map(form => findPartByNumber(database, form))
    .find(part => part !== undefined)
}

/**
 * The part in a pack whose GTIN-14 was made of the part's own: a digit from 1 to 8 before it, and another check digit. How
 * many are in the pack it does not say.
 */
function findPackContent(database: ReadableDatabase, gtin: string): string | null {
  if (!/^[1-8]/.test(gtin)) return null
  const within = gtin.slice(1, -1)
  return findGtin(database, `0${within}${gs1CheckDigit(within)}`)?.partNumber ?? null
}

function findLocation(database: ReadableDatabase, typed: string): FoundCode | undefined {
  const found = listLocations(database).find(({ location }) => location.toUpperCase() === typed.toUpperCase())
  return found && { kind: 'location', location: found.location, name: found.name }
}

function asFound(
  { partNumber, description, family }: Part,
  rest: { readonly pieces: number; readonly by: 'attached' | 'gtin' | 'number' },
): FoundCode {
  return { kind: 'part', partNumber, description: description === '' ? family : description, ...rest }
}
