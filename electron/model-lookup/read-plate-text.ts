import type { FoundModels } from '../../shared-schemas/model-lookup.ts'
import {
  isLabelWord,
  isSerialLabelWord,
  ratingPatterns,
  singleLetterUnits,
  unitWords,
} from './label-words.ts'
import { countReadCharacters, plateKey } from './plate-key.ts'
import type { KnownBrands } from './recognise-brand.ts'
import { type PlateWord, splitPlateWords } from './split-plate-words.ts'

export type SetAside = FoundModels['setAside'][number]

/** One way to take a plate text: what may be the number, and what would then be set aside. */
export interface PlateReading {
  readonly key: string
  readonly setAside: readonly SetAside[]
  /** The brand that stood on the plate, where it was taken as one. */
  readonly brand: string | undefined
}

export interface PlateReadings {
  /** The text as it stands, nothing set aside. */
  readonly whole: PlateReading
  /** Without labels, ratings, serials and brands; the whole text where that would leave nothing. */
  readonly kept: PlateReading
  /** Single numbers of a plate that shows several, longest first. Each has set the others aside. */
  readonly parts: readonly PlateReading[]
  /** Without unknown words before or behind that have no figure in them: only for a likelihood, never for agreement. */
  readonly guesses: readonly PlateReading[]
}

/** What the catalogue knows of words that are no model numbers. */
export interface KnownWords {
  readonly brands: KnownBrands
  /** Whether a key is a sales name. */
  readonly isName: (key: string) => boolean
}

/** The numbers that a plate text may mean, from the whole of it to each single number. Loses no word: each is in a key or set aside. */
export function readPlateText(text: string, { brands, isName }: KnownWords): PlateReadings {
  const whole = { key: plateKey(text), setAside: [], brand: undefined }
  const words = splitPlateWords(text)
  const { roles, brand } = takeRoles(words, brands)
  const runs = runsOf(words, roles)
  const keep = (kept: readonly number[]): PlateReading => ({
    key: kept.map(place => words[place]?.key).join(''),
    setAside: listSetAside(words, roles, kept),
    brand,
  })
  const kept = keep(runs.flat())
  return {
    whole,
    kept: countReadCharacters(kept.key) < fewestReadable ? whole : kept,
    parts: partsOf(words, runs, isName).map(keep),
    guesses: withoutOuterWords(words, runs.flat()).map(keep),
  }
}

/** `modl QT 100/1` without `modl`, then without `QT`; `QT 100/1 not filling` likewise from behind. */
function withoutOuterWords(words: readonly PlateWord[], kept: readonly number[]): number[][] {
  const hasFigure = (place: number) => /\d/.test(words[place]?.key ?? '')
  const firstFigure = kept.findIndex(hasFigure)
  const lastFigure = kept.findLastIndex(hasFigure)
  if (firstFigure < 0) return []
  const guesses: number[][] = []
  for (let from = 0; from <= firstFigure; from++)
    for (let to = kept.length; to > lastFigure; to--)
      if (from > 0 || to < kept.length) guesses.push(kept.slice(from, to))
  return guesses.slice(0, mostParts)
}

/** Below this a text says nothing. */
export const fewestReadable = 3

type Role = SetAside['as'] | undefined

function takeRoles(words: readonly PlateWord[], brands: KnownBrands) {
  const roles: Role[] = words.map(() => undefined)
  const brand = markBrand(words, roles, brands)
  markRatings(words, roles)
  words.forEach((_, place) => {
    if (roles[place] === undefined && isSerialLabel(words, place)) markSerial(words, roles, place)
  })
  words.forEach(({ key }, place) => {
    if (roles[place] === undefined && isLabelWord(key) && !mayBeSuffix(words, roles, place))
      roles[place] = 'label'
  })
  return { roles, brand }
}

/** A brand may be several words (`Hesk & Rowe`). Every one on the plate is set aside; the first is the brand. */
function markBrand(words: readonly PlateWord[], roles: Role[], brands: KnownBrands): string | undefined {
  let first: string | undefined
  for (let place = 0; place < words.length; place++)
    for (let length = Math.min(longestBrandWords, words.length - place); length > 0; length--) {
      const named = brandAt(words.slice(place, place + length), brands)
      if (named === undefined) continue
      first ??= named
      roles.fill('brand', place, place + length)
      place += length - 1
      break
    }
  return first
}

const longestBrandWords = 4

function brandAt(words: readonly PlateWord[], brands: KnownBrands): string | undefined {
  const key = words.map(word => word.key).join('')
  const named = brands.named(key)
  if (named !== undefined || words.length > 1 || isLabelWord(key)) return named
  return brands.almostNamed(key)
}

function markRatings(words: readonly PlateWord[], roles: Role[]): void {
  words.forEach(({ word }, place) => {
    if (roles[place] !== undefined) return
    const printed = word.normalize('NFKC').toUpperCase()
    if (ratingPatterns.some(pattern => pattern.test(printed))) roles[place] = 'rating'
  })
  const markUnits = (isUnit: (printed: string) => boolean) =>
    words.forEach(({ word }, place) => {
      const figure = words[place - 1]
      if (figure === undefined || roles[place - 1] !== undefined || roles[place] !== undefined) return
      if (!isUnit(word.toUpperCase()) || !/^\d+(?:[-/.,]+\d+)*$/.test(figure.word)) return
      roles.fill('rating', place - 1, place + 1)
    })
  markUnits(printed => unitWords.has(printed))
  if (roles.includes('rating')) markUnits(printed => singleLetterUnits.has(printed))
}

/** `SN` alone might begin a model number, so it counts only before a long number; `S/N` and `SER.` count always. */
function isSerialLabel(words: readonly PlateWord[], place: number): boolean {
  const word = words[place]
  if (word === undefined || !isSerialLabelWord(word.key)) return false
  return word.punctuated || word.key.length > 2 || (words[place + 1]?.key.length ?? 0) >= longEnoughAlone
}

/** The label, a further label word after it (`SERIAL NO`), and the number. */
function markSerial(words: readonly PlateWord[], roles: Role[], place: number): void {
  roles[place] = 'label'
  let number = place + 1
  while (isLabelWord(words[number]?.key ?? '')) roles[number++] = 'label'
  const serial = words[number]
  if (serial !== undefined && roles[number] === undefined && /\d/.test(serial.key))
    roles[number] = 'other-number'
}

/** `NO` or `IN` as the last word behind a number labels nothing; it may be how the number ends. */
function mayBeSuffix(words: readonly PlateWord[], roles: readonly Role[], place: number): boolean {
  const word = words[place]
  if (word === undefined || word.key.length > longestSuffixWord || word.punctuated) return false
  if (place === 0 || word.startsApart || roles[place - 1] !== undefined) return false
  return words.slice(place + 1).every((_, later) => roles[place + 1 + later] !== undefined)
}

const longestSuffixWord = 3

/** Words that stand together and may be one number: nothing set aside between them, no new line or comma. */
function runsOf(words: readonly PlateWord[], roles: readonly Role[]): number[][] {
  const runs: number[][] = []
  words.forEach((word, place) => {
    if (roles[place] !== undefined) return
    const open = runs.at(-1)
    if (open !== undefined && open.at(-1) === place - 1 && !word.startsApart) open.push(place)
    else runs.push([place])
  })
  return runs
}

/**
 * The runs, and within a run its single numbers. A word is left out of a run only when it is long enough to be a
 * number of its own or ends a known sales name: a short one may be the suffix that decides which part fits.
 */
function partsOf(
  words: readonly PlateWord[],
  runs: readonly (readonly number[])[],
  isName: KnownWords['isName'],
): number[][] {
  const keyOf = (places: readonly number[]) => places.map(place => words[place]?.key ?? '').join('')
  const standsAlone = (rest: readonly number[], neighbour: number | undefined) =>
    neighbour === undefined || keyOf([neighbour]).length >= longEnoughAlone || isName(keyOf(rest))
  const parts: number[][] = runs.length > 1 ? runs.map(run => [...run]) : []
  for (const run of runs)
    for (let from = 0; from < run.length; from++)
      for (let to = from + 1; to <= Math.min(run.length, from + longestNumberWords); to++) {
        const before = run.slice(0, from)
        const after = run.slice(to)
        if (before.length + after.length === 0) continue
        if (standsAlone(before, before.at(-1)) && standsAlone(after, after[0]))
          parts.push(run.slice(from, to))
      }
  return parts
    .filter(part => countReadCharacters(keyOf(part)) > fewestReadable)
    .sort((one, other) => keyOf(other).length - keyOf(one).length)
    .slice(0, mostParts)
}

const longestNumberWords = 5
const longEnoughAlone = 5
const mostParts = 24

function listSetAside(
  words: readonly PlateWord[],
  roles: readonly Role[],
  kept: readonly number[],
): SetAside[] {
  const keptPlaces = new Set(kept)
  return words.flatMap(({ word }, place) =>
    keptPlaces.has(place) ? [] : [{ word, as: roles[place] ?? 'other-number' }],
  )
}
