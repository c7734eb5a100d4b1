import type { LoadRun, PlainLines, PlainTake } from '../loading/catalogue-file.ts'
import { hasWildcard } from '../loading/match-model-pattern.ts'
import { normaliseNumber } from '../normalise-number.ts'
import type { SourceRow } from '../reading/source-rows.ts'
import { ByteTable, hashBasis, hashPrime } from './byte-table.ts'
import type { FitmentGatherer } from './gather-fitments.ts'
import { splitPlainLine } from './split-plain-line.ts'

interface PlainFitments {
  readonly run: LoadRun
  readonly gatherer: FitmentGatherer
  readonly header: readonly string[]
  /** Checks a row cell by cell and hands it to the gatherer, or rejects it. */
  readonly takeSlowly: (row: SourceRow) => void
}

/**
 * Reads lines of fitments.csv as bytes. A row whose bytes say nothing new, its model and all the rest each met before in
 * a sound row, is taken for what they meant then; any other is read slowly, cell by cell. Undefined where the two columns
 * of the model do not stand side by side.
 */
export function openPlainFitments(plain: PlainFitments): PlainLines | undefined {
  const [brandAt, modelAt] = [plain.header.indexOf('brand'), plain.header.indexOf('model_number')]
  if (Math.abs(brandAt - modelAt) !== 1) return undefined
  const lines = new PlainFitmentLines(plain)
  return { take: (bytes, line) => lines.take(bytes, line) }
}

const [comma, feed, carriage, quote] = [0x2c, 0x0a, 0x0d, 0x22]
const notPlain = -1
const longestRest = 4096

class PlainFitmentLines {
  readonly #run: LoadRun
  readonly #gatherer: FitmentGatherer
  readonly #takeSlowly: (row: SourceRow) => void
  readonly #columns: number
  /** The first of the two columns that name the model. */
  readonly #firstOfModel: number
  readonly #isBrandFirst: boolean
  /** The value is the place of the saying. */
  readonly #sayings = new ByteTable()
  readonly #models = new ByteTable()
  readonly #decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

  // The row before: what stood before its model, then what stood after it. Most rows of a list differ in the model alone.
  readonly #rest = new Uint8Array(longestRest)
  #beforeLength = 0
  #restLength = 0
  #saying = notPlain
  #emptyLines = 0

  // What `#measure` found of a line.
  #modelStart = 0
  #modelEnd = 0
  #lineEnd = 0
  #cells = 0

  constructor({ run, gatherer, header, takeSlowly }: PlainFitments) {
    this.#run = run
    this.#gatherer = gatherer
    this.#takeSlowly = takeSlowly
    this.#columns = header.length
    const [brandAt, modelAt] = [header.indexOf('brand'), header.indexOf('model_number')]
    this.#firstOfModel = Math.min(brandAt, modelAt)
    this.#isBrandFirst = brandAt < modelAt
  }

  /** Takes lines, each with its LF, until one is not plain; gives how many there were. */
  take(bytes: Uint8Array, firstLine: number): PlainTake {
    let [at, line] = [0, firstLine]
    this.#emptyLines = 0
    while (at < bytes.length) {
      const next = this.#takeRepeated(bytes, at, line)
      at = next === notPlain ? this.#takeLine(bytes, at, line) : next
      if (at === notPlain) break
      line += 1
    }
    const lines = line - firstLine
    return { lines, rows: lines - this.#emptyLines, isPlain: at !== notPlain }
  }

  /** The place after the line, where it differs from the row before in a known model alone. */
  #takeRepeated(bytes: Uint8Array, start: number, line: number): number {
    if (this.#saying === notPlain) return notPlain
    const [rest, beforeLength, restLength] = [this.#rest, this.#beforeLength, this.#restLength]
    const modelStart = start + beforeLength
    if (modelStart >= bytes.length) return notPlain
    for (let at = 0; at < beforeLength; at += 1) if (bytes[start + at] !== rest[at]) return notPlain
    let [at, hash, commas] = [modelStart, hashBasis, 0]
    for (; ; at += 1) {
      const byte = bytes[at] as number
      if (byte === comma) {
        commas += 1
        if (commas === 2) break
      } else if (byte === feed || byte === carriage || byte === quote) break
      hash = Math.imul(hash ^ byte, hashPrime)
    }
    const modelEnd = at
    if (commas !== (restLength > beforeLength ? 2 : 1)) return notPlain
    if (modelEnd + restLength - beforeLength >= bytes.length) return notPlain
    for (let index = beforeLength; index < restLength; index += 1, at += 1)
      if (bytes[at] !== rest[index]) return notPlain
    if (bytes[at] === carriage) at += 1
    if (bytes[at] !== feed) return notPlain
    const modelId = this.#models.find(bytes, hash, modelStart, modelEnd, modelEnd, modelEnd)
    if (modelId < 0) return notPlain
    this.#gatherer.add(modelId, { place: this.#saying }, line)
    return at + 1
  }

  /** The place after the line; `notPlain` where only the general reader can say where the row ends. */
  #takeLine(bytes: Uint8Array, start: number, line: number): number {
    const next = this.#measure(bytes, start)
    if (next === notPlain) return notPlain
    if (this.#lineEnd === start) {
      this.#emptyLines += 1
      return next
    }
    if (this.#cells !== this.#columns) {
      this.#takeCells(bytes, start, line)
      return next
    }
    const [modelStart, modelEnd, end] = [this.#modelStart, this.#modelEnd, this.#lineEnd]
    const sayingHash = hashOf(bytes, modelEnd, end, hashOf(bytes, start, modelStart, hashBasis))
    const modelHash = hashOf(bytes, modelStart, modelEnd, hashBasis)
    let saying = this.#sayings.find(bytes, sayingHash, start, modelStart, modelEnd, end)
    let modelId = this.#models.find(bytes, modelHash, modelStart, modelEnd, modelEnd, modelEnd)
    if (modelId < 0 && saying >= 0) {
      modelId = this.#findModel(bytes, modelStart, modelEnd)
      if (modelId >= 0) this.#models.add(bytes, modelHash, [modelStart, modelEnd, 0, 0], modelId)
    }
    if (saying >= 0 && modelId >= 0) this.#gatherer.add(modelId, { place: saying }, line)
    else {
      this.#takeCells(bytes, start, line)
      const { last } = this.#gatherer
      if (last === undefined) return next
      if (saying < 0) {
        saying = last.saying.place
        this.#sayings.add(bytes, sayingHash, [start, modelStart, modelEnd, end], saying)
      }
      if (modelId < 0) this.#models.add(bytes, modelHash, [modelStart, modelEnd, 0, 0], last.modelId)
    }
    this.#remember(bytes, saying, start)
    return next
  }

  #remember(bytes: Uint8Array, saying: number, start: number): void {
    const [beforeLength, afterLength] = [this.#modelStart - start, this.#lineEnd - this.#modelEnd]
    this.#saying = beforeLength + afterLength <= longestRest ? saying : notPlain
    if (this.#saying === notPlain) return
    const rest = this.#rest
    for (let at = 0; at < beforeLength; at += 1) rest[at] = bytes[start + at] as number
    for (let at = 0; at < afterLength; at += 1) rest[beforeLength + at] = bytes[this.#modelEnd + at] as number
    this.#beforeLength = beforeLength
    this.#restLength = beforeLength + afterLength
  }

  /** Where the model stands in the line, and how many cells there are; gives the place after the line. */
  #measure(bytes: Uint8Array, start: number): number {
    let [at, cells] = [start, 0]
    this.#modelStart = start
    for (;;) {
      if (cells === this.#firstOfModel) this.#modelStart = at
      if (bytes[at] === quote) {
        at = endOfQuoted(bytes, at)
        if (at === notPlain) return notPlain
      }
      let byte = bytes[at] as number
      while (byte !== comma && byte !== feed && byte !== carriage) {
        if (byte === quote) return notPlain
        at += 1
        byte = bytes[at] as number
      }
      cells += 1
      if (cells === this.#firstOfModel + 2) this.#modelEnd = at
      if (byte === comma) {
        at += 1
        continue
      }
      this.#lineEnd = at
      this.#cells = cells
      if (byte === carriage) at += 1
      return bytes[at] === feed ? at + 1 : notPlain
    }
  }

  #takeCells(bytes: Uint8Array, start: number, line: number): void {
    this.#gatherer.last = undefined
    const cells = splitPlainLine(this.#decoder.decode(bytes.subarray(start, this.#lineEnd)))
    this.#takeSlowly({ line, cells, fault: undefined })
  }

  /** A known model that is written plainly; -1 where the row must be looked at as a whole. */
  #findModel(bytes: Uint8Array, start: number, end: number): number {
    const cells = splitPlainLine(this.#decoder.decode(bytes.subarray(start, end))).map(cell => cell.trim())
    const [first = '', second = ''] = cells
    const [brand, number] = this.#isBrandFirst ? [first, second] : [second, first]
    if (cells.some(cell => !plainWord.test(cell)) || hasWildcard(number)) return notPlain
    const { known } = this.#run
    const brandId = known.brands.get(known.keyOf(brand))
    if (brandId === undefined) return notPlain
    return known.findModel(brandId, normaliseNumber(number)) ?? notPlain
  }
}

/** Not every word that a cell may hold, but none that it may not. */
const plainWord = /^[\p{L}\p{N}\p{P}\p{S} ]{1,100}$/u

function hashOf(bytes: Uint8Array, start: number, end: number, basis: number): number {
  let hash = basis
  for (let at = start; at < end; at += 1) hash = Math.imul(hash ^ (bytes[at] as number), hashPrime)
  return hash
}

/** The place after the closing quote of a cell that is closed on its line and followed by the next cell or the end. */
function endOfQuoted(bytes: Uint8Array, start: number): number {
  for (let at = start + 1; at < bytes.length; at += 1) {
    const byte = bytes[at]
    if (byte === feed || byte === carriage) return notPlain
    if (byte !== quote) continue
    const following = bytes[at + 1]
    if (following === quote) at += 1
    else return following === comma || following === feed || following === carriage ? at + 1 : notPlain
  }
  return notPlain
}
