import { type Measure, measureUnits } from '../../catalogue/expected-reading.ts'
import { readValue } from '../../catalogue/measured-values.ts'

export type MeasuredReading =
  /** In the unit of the measure; infinite where a meter shows an open circuit. */
  | { readonly kind: 'value'; readonly value: number; readonly conditions: Conditions }
  /** Of a changeover switch: of its two contacts, the one closed at rest first. True is closed. */
  | { readonly kind: 'contacts'; readonly atRest: Contacts; readonly actuated: Contacts }

export type Contacts = readonly [closedAtRest: boolean, openAtRest: boolean]

/** What was typed after the figure: `at 20 °C`, `for 2000 W`. */
export interface Conditions {
  readonly celsius: number | null
  readonly watts: number | null
}

/**
 * Reads what a person typed for a measurement, its unit perhaps left out: `26.4 Ω`, `2k2`, `4,7 k`, `OL`, `0.8 bar`,
 * `80 kPa`, `12.1 k at 20 °C`, `26 for 2000 W`; of a changeover switch `closed open / open closed`, or what the meter
 * shows. Undefined: not readable, or a comma that may part thousands.
 */
export function readMeasured(measure: Measure, typed: string): MeasuredReading | undefined {
  const text = typed.normalize('NFKC').trim()
  if (measure === 'changeover') return readContacts(text)
  const parted = /^(.*?)(?:\s*(?:at|@)\s*([^@]+?))?(?:,?\s*for\s*(.+))?$/i.exec(text)
  const value = readFigure(measure, parted?.[1] ?? '')
  const celsius = readCondition('temperature', parted?.[2])
  const watts = readCondition('power', parted?.[3])
  if (value === undefined || celsius === undefined || watts === undefined) return undefined
  return { kind: 'value', value, conditions: { celsius, watts } }
}

function readCondition(measure: Measure, text: string | undefined): number | null | undefined {
  return text === undefined ? null : readFigure(measure, text)
}

/** What meters show, and people say, where no current flows. */
const openWords = /^(o\.?l\.?|0\.?l\.?|open|infinite|infinity|∞|no continuity)$/i
const mayBeNegative: readonly Measure[] = ['temperature', 'voltage', 'current']

function readFigure(measure: Measure, written: string): number | undefined {
  const text = written.trim()
  if (measure === 'resistance' && openWords.test(text)) return Number.POSITIVE_INFINITY
  const unit = measureUnits[measure]
  const value = convert(measure, text) ?? readOne(spellOut(measure, text), unit)
  return value !== undefined && (value >= 0 || mayBeNegative.includes(measure)) ? value : undefined
}

function readOne(text: string, unit: string): number | undefined {
  // A point and three figures part a decimal here as everywhere; a comma and three figures may part thousands.
  if (/,\d{3}(?!\d)/.test(text) || (text.match(/[.,]/g) ?? []).length > 1) return undefined
  const value = readValue(text.replace(',', '.'), unit)
  const only =
    value?.kind === 'numbers' && value.alternatives.length === 1 ? value.alternatives[0] : undefined
  return only !== undefined && only.low === only.high ? only.low : undefined
}

/** Units that differ by more than a power of ten; factors of NIST Special Publication 811, appendix B, from memory. */
function convert(measure: Measure, text: string): number | undefined {
  const psi = measure === 'pressure' ? /^(.+?)\s*psi$/i.exec(text)?.[1] : undefined
  if (psi !== undefined) return scale(readOne(`${psi} bar`, 'bar'), 0.06894757)
  const fahrenheit = measure === 'temperature' ? /^(.+?)\s*°?F$/.exec(text)?.[1] : undefined
  const degrees = fahrenheit === undefined ? undefined : readOne(`${fahrenheit} °C`, '°C')
  return degrees === undefined ? undefined : (degrees - 32) / 1.8
}

function scale(value: number | undefined, factor: number): number | undefined {
  return value === undefined ? undefined : value * factor
}

/** The short ways in which people write units, as the catalogue writes them. */
function spellOut(measure: Measure, text: string): string {
  switch (measure) {
    case 'resistance':
      return text
        .replace(/^(\d+)([RkKM])(\d+)$/, (_, whole, letter, rest) => `${whole}.${rest} ${asPrefix(letter)}Ω`)
        .replace(/(\d)\s*([kKMR])$/, (_, figure, letter) => `${figure} ${asPrefix(letter)}Ω`)
    case 'capacitance':
      return text.replace(/mfd$/i, 'µF')
    case 'temperature':
      return text.replace(/(\d)\s*(?:deg(?:rees)?|°)?\s*C?$/i, '$1 °C')
    case 'flow':
      return text.replace(/\s*(?:\/|per|a)\s*min(?:ute)?$/i, '').replace(/lit(?:re|er)s?$/i, 'l')
    case 'pulses':
      return text.replace(/\s*(?:\/|per|a)\s*l(?:it(?:re|er))?$/i, '')
    case 'time':
      return text.replace(/sec(?:onds?)?$/i, 's')
    default:
      return text
  }
}

/** The letters of IEC 60062, where R stands for the point alone. */
function asPrefix(letter: string): string {
  return letter === 'R' ? '' : letter === 'M' ? 'M' : 'k'
}

/** Up to here a contact counts as closed, a meter's leads and a worn contact included. Our choice. */
const closedOhms = 2

function readContacts(text: string): MeasuredReading | undefined {
  const states = text
    .replace(/\s+(?=[kM]?Ω)/g, '')
    .split('/')
    .map(half => half.trim().split(/\s*;\s*|\s+(?=\S+$)/))
    .map(([one, other]) => [readContact(one), readContact(other)])
  const [[restClosed, restOpen] = [], [actuatedClosed, actuatedOpen] = [], ...more] = states
  if (
    more.length > 0 ||
    restClosed === undefined ||
    restOpen === undefined ||
    actuatedClosed === undefined ||
    actuatedOpen === undefined
  )
    return undefined
  return { kind: 'contacts', atRest: [restClosed, restOpen], actuated: [actuatedClosed, actuatedOpen] }
}

function readContact(text: string | undefined): boolean | undefined {
  if (text === undefined) return undefined
  if (/^closed$/i.test(text)) return true
  const ohms = readFigure('resistance', text)
  return ohms === undefined ? undefined : ohms <= closedOhms
}
