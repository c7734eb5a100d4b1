import type { OrderFlag, Severity } from '../../shared-schemas/order-check.ts'

interface FlagKind {
  readonly severity: Severity
  /** Whether a person may let this stop pass. What is not even readable is mended instead. */
  readonly mayOverride?: boolean
}

const stop: FlagKind = { severity: 'stop', mayOverride: true }
const unreadable: FlagKind = { severity: 'stop', mayOverride: false }
const caution: FlagKind = { severity: 'caution' }
const note: FlagKind = { severity: 'note' }

/**
 * How grave each finding is. A stop: what is ordered is wrong, cannot be delivered, or is not proved to fit. A
 * caution: a person should look before sending. A note: good to know.
 */
export const flagTable = {
  'part-missing': unreadable,
  'part-unknown': stop,
  'quantity-unreadable': unreadable,
  'quantity-assumed': note,

  'appliance-unreadable': unreadable,
  'appliance-incomplete': caution,
  'model-unknown': stop,
  'does-not-fit': stop,
  'no-record': stop,
  'fit-not-decided': stop,
  'needed-part-missing': caution,
  'needed-part-ordered': note,
  'above-appliance': caution,
  'replaced-together-short': note,
  'replaced-together-missing': note,
  'replaced-together-ready': note,
  'kit-contains-line': caution,
  'comes-in-ordered-kit': caution,

  superseded: caution,
  'superseded-not-listed': stop,
  'superseded-by-date': caution,

  'not-offered-by-supplier': stop,
  'not-offered': caution,
  'below-minimum': caution,
  'not-whole-packs': caution,
  'price-far': caution,

  'repeated-line': caution,
  'same-part-elsewhere': note,
  'interchangeable-on-order': caution,
  'on-open-order': caution,
  'in-stock': caution,
  'some-in-stock': note,

  // What does not go together between the plate and the catalogue makes the model number itself doubtful.
  'wrong-fit-returned': caution,
  'read-as': caution,
  'made-outside': caution,
  'serial-date-differs': caution,
  'volts-differ': caution,
  'hertz-differ': caution,
  'watts-differ': caution,

  // Work for licensed hands, and safety devices, are worth a look before ordering; the rest is for the bench.
  gas: caution,
  'sealed-refrigerant': caution,
  'microwave-hv': caution,
  'fixed-wiring': caution,
  'safety-device': caution,
  mains: note,
  'stored-charge': note,
  water: note,
  hot: note,
  sharp: note,
  moving: note,
} as const satisfies Record<string, FlagKind>

export type FlagCode = keyof typeof flagTable

/** A finding with the severity that the table gives it. */
export function flag(code: FlagCode, text: string): OrderFlag {
  const { severity, mayOverride }: FlagKind = flagTable[code]
  return { code, severity, text, ...(mayOverride === undefined ? {} : { mayOverride }) }
}

/** The same for a code that comes from the fit check; one that the table does not know is a caution, never silence. */
export function flagNamed(code: string, text: string): OrderFlag {
  return isFlagCode(code) ? flag(code, text) : { code, severity: 'caution', text }
}

function isFlagCode(code: string): code is FlagCode {
  return Object.hasOwn(flagTable, code)
}
