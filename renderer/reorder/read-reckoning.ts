import { type ReorderSettings, reorderSettings } from '../../shared-schemas/reorder-settings.ts'

/** What a proposal is reckoned with besides its aim, as it stands in fields: days, money, and a percentage. */
export interface TypedReckoning {
  readonly reviewDays: string
  readonly leadDays: string
  readonly lineCost: string
  readonly holdingRate: string
}

type Reckoning = Pick<ReorderSettings, keyof TypedReckoning>

/** Reads what was typed; the first field that cannot be read is told in a sentence. An empty line cost is none. */
export function readReckoning(
  typed: TypedReckoning,
): { readonly ok: true; readonly settings: Reckoning } | { readonly ok: false; readonly fault: string } {
  const settings: Reckoning = {
    reviewDays: readNumber(typed.reviewDays),
    leadDays: readNumber(typed.leadDays),
    lineCost: typed.lineCost.trim() === '' ? null : typed.lineCost.trim(),
    holdingRate: readNumber(typed.holdingRate.replace('%', '')) / 100,
  }
  const wrong = fields.find(field => !reorderSettings.shape[field].safeParse(settings[field]).success)
  return wrong === undefined ? { ok: true, settings } : { ok: false, fault: faults[wrong] }
}

export function writeReckoning({ reviewDays, leadDays, lineCost, holdingRate }: Reckoning): TypedReckoning {
  return {
    reviewDays: String(reviewDays),
    leadDays: String(leadDays),
    lineCost: lineCost ?? '',
    // 100 times 0.07 is a little more than 7.
    holdingRate: String(Number((100 * holdingRate).toFixed(6))),
  }
}

const faults: Readonly<Record<keyof TypedReckoning, string>> = {
  reviewDays: 'Write the days from one order to the next as a whole number from 1 to 366.',
  leadDays: 'Write the days a new supplier takes as a whole number from 0 to 730.',
  lineCost: 'Write what a line costs as 1.50, or leave it empty for nothing.',
  holdingRate: 'Write what keeping costs as a percentage above 0, up to 500.',
}
const fields: readonly (keyof TypedReckoning)[] = ['reviewDays', 'leadDays', 'lineCost', 'holdingRate']

function readNumber(text: string): number {
  const trimmed = text.trim().replace(',', '.')
  return /^\d+(\.\d+)?$/.test(trimmed) ? Number(trimmed) : Number.NaN
}
