import type { ExplanationKind } from '../../shared-schemas/van-counts.ts'

/** An explanation as it stands in the reason of a movement and in the report. */
export function wordExplanation({
  kind,
  detail,
}: {
  readonly kind: ExplanationKind
  readonly detail: string
}): string {
  const words: Readonly<Record<ExplanationKind, string>> = {
    swap: `swapped with ${detail}`,
    'replaced-number': `lies under ${detail}`,
    'job-line': `fitted on job ${detail}`,
    transfer: `transfer ${detail} not as booked`,
    pack: `packs of ${detail} taken for pieces`,
    digits: `miswritten, ${detail}`,
    loss: detail === '' ? 'lost' : `lost: ${detail}`,
    find: detail === '' ? 'found' : `found: ${detail}`,
  }
  return words[kind]
}
