import { hasGs1CheckDigit } from './gs1-check-digit.ts'
import { type GsElement, groupSeparator, readElements } from './gs1-elements.ts'

/** What a scanned code says by itself, before anybody looks up what it stands for here. */
export type Scan =
  | { readonly kind: 'undo' }
  | { readonly kind: 'location-label'; readonly location: string }
  | { readonly kind: 'part-label'; readonly part: string }
  | {
      readonly kind: 'trade-item'
      /** In the fourteen digits in which all GTINs are compared; null where the code names the item otherwise. */
      readonly gtin: string | null
      /** The maker's or the customer's own numbers that stand in the code, in the order in which they are tried. */
      readonly numbers: readonly string[]
      /** How many pieces the code says that it stands for; null where it does not say. */
      readonly pieces: number | null
    }
  | { readonly kind: 'plain'; readonly text: string }
  | { readonly kind: 'misread'; readonly why: 'check-digit' | 'elements' }

/** Our own labels. Two full stops open them, as no maker's number begins so; keyboards of most countries agree on that key. */
export const undoLabel = '..UNDO'
export const locationLabel = (location: string) => `..L.${location}`
export const partLabel = (part: string) => `..P.${part}`

/** Reads what a scanner sent. Only what the code itself says counts; a number that could be anything stays plain text. */
export function readScan(sent: string): Scan {
  const text = sent.trim()
  const own = /^\.\.(?:(UNDO)$|([LP])\.(.+)$)/i.exec(text)
  if (own !== null) return readOwnLabel(own)
  const { symbology, data } = partSymbology(text)
  if (saysElements.has(symbology) || data.startsWith(groupSeparator) || data.includes(groupSeparator))
    return readTradeItem(readElements(data.replace(new RegExp(`^${groupSeparator}`), '')))
  if (bearsGtin.test(symbology) && /^\d+$/.test(data))
    return readGtin(data) ?? { kind: 'misread', why: 'check-digit' }
  // Many scanners send no word about the symbol: a bare number is a GTIN where its check digit says so.
  return readBareElements(data) ?? readGtin(data, [data]) ?? { kind: 'plain', text: data }
}

function readOwnLabel([, undo, letter, name = '']: RegExpExecArray): Scan {
  if (undo !== undefined) return { kind: 'undo' }
  return letter?.toUpperCase() === 'L'
    ? { kind: 'location-label', location: name.trim() }
    : { kind: 'part-label', part: name.trim() }
}

/** The three characters that say which symbol was read: `]`, a letter and a digit (ISO/IEC 15424). */
function partSymbology(text: string) {
  const found = /^\][A-Za-z][0-9]/.exec(text)?.[0] ?? ''
  return { symbology: found, data: text.slice(found.length) }
}

/** GS1-128, GS1 DataBar, GS1 DataMatrix and GS1 QR Code: their data is made of elements. */
const saysElements: ReadonlySet<string> = new Set([']C1', ']e0', ']d2', ']Q3'])
/** EAN and UPC, and ITF with a check digit. */
const bearsGtin = /^\](E[0-4]|I1)$/

/** A GTIN of 8, 12, 13 or 14 digits. One bare number in ten has a right check digit without being one. */
function readGtin(data: string, numbers: readonly string[] = []): Scan | undefined {
  if (!/^(\d{8}|\d{12,14})$/.test(data) || !hasGs1CheckDigit(data)) return undefined
  return { kind: 'trade-item', gtin: data.padStart(14, '0'), numbers, pieces: null }
}

/** An element string that begins with a whole GTIN, without a word about the symbol. Shorter ones could be any number. */
function readBareElements(data: string): Scan | undefined {
  if (!/^0[12]\d{14}/.test(data)) return undefined
  const elements = readElements(data)
  return elements && readTradeItem(elements)
}

function readTradeItem(elements: readonly GsElement[] | undefined): Scan {
  if (elements === undefined) return { kind: 'misread', why: 'elements' }
  const factOf = (identifier: string) => elements.find(element => element.identifier === identifier)?.value
  const count = factOf('37') ?? factOf('30')
  return {
    kind: 'trade-item',
    gtin: factOf('01') ?? factOf('02') ?? null,
    numbers: [factOf('241'), factOf('240')].filter(number => number !== undefined),
    pieces: count === undefined || Number(count) === 0 ? null : Number(count),
  }
}
