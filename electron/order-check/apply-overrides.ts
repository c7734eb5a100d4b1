import type { OrderFlag, StopOverride } from '../../shared-schemas/order-check.ts'
import { normaliseNumber } from '../catalogue/normalise-number.ts'
import type { FlagCode } from './flag-table.ts'
import type { LineFacts } from './line-facts.ts'

/**
 * What an override is about. Another date of making or serial is another appliance, and who cannot deliver says
 * nothing of another supplier: a stop is let pass only for what the person saw.
 */
export interface OverrideSubject {
  readonly partKey: string
  readonly brandKey: string
  readonly modelKey: string
  readonly made: string
  readonly serial: string
  readonly supplier: string
  readonly code: string
}

export interface RecordedOverride extends OverrideSubject, StopOverride {}

export function subjectOf(
  { given, part, appliance }: LineFacts,
  code: string,
  supplier: string | undefined,
): OverrideSubject {
  const [only, ...others] = appliance.kind === 'read' ? appliance.open.models : []
  const isSettled = appliance.kind === 'read' && appliance.open.agreement !== 'differs' && others.length === 0
  const model = isSettled && only !== undefined ? only : undefined
  const ofSupplier: FlagCode = 'not-offered-by-supplier'
  return {
    partKey: normaliseNumber(part?.partNumber ?? given.partNumber),
    brandKey: normaliseNumber(model?.brand ?? given.brand ?? ''),
    modelKey: model?.key ?? normaliseNumber(given.modelNumber ?? ''),
    made: given.made ?? '',
    serial: given.serial ?? '',
    supplier: code === ofSupplier ? (supplier ?? '') : '',
    code,
  }
}

/** Stops that somebody let pass become notes that say who and why; everything else stays as it is. */
export function applyOverrides(
  flags: readonly OrderFlag[],
  facts: LineFacts,
  supplier: string | undefined,
  recorded: ReadonlyMap<string, RecordedOverride>,
): OrderFlag[] {
  return flags.map(found => {
    if (found.mayOverride !== true) return found
    const override = recorded.get(nameSubject(subjectOf(facts, found.code, supplier)))
    return override === undefined ? found : letPass(found, override)
  })
}

function letPass({ code, text }: OrderFlag, { reason, initials, recordedAt }: StopOverride): OrderFlag {
  const who = `Let pass by ${initials} on ${recordedAt.slice(0, 10)}: ${reason}`
  return {
    code,
    severity: 'note',
    text: `${text} ${/[.!?]$/.test(who) ? who : `${who}.`}`,
    override: { reason, initials, recordedAt },
  }
}

/** One text for one subject, to find its override by. */
export function nameSubject(subject: OverrideSubject): string {
  const { partKey, brandKey, modelKey, made, serial, supplier, code } = subject
  return [partKey, brandKey, modelKey, made, serial, supplier, code].join('\u0000')
}
