import type { FittingFamily, FittingPart } from '../../shared-schemas/fit-check.ts'
import { familyCode } from '../../shared-schemas/identifiers.ts'

/** A family that fits, with one part, unless the test says otherwise. */
export function makeFamily(
  family: string,
  {
    parts,
    ...given
  }: Partial<Omit<FittingFamily, 'parts'>> & { readonly parts?: readonly Partial<FittingPart>[] } = {},
): FittingFamily {
  const verdict = given.verdict ?? 'fits'
  return {
    family: familyCode.parse(family),
    name: family,
    function: 'drain',
    verdict,
    quantityPerAppliance: 1,
    positions: [],
    safetyDevice: false,
    cautions: [],
    ...given,
    parts: (parts ?? [{}]).map(part => makePart({ verdict, ...part })),
  }
}

export function makePart(given: Partial<FittingPart> = {}): FittingPart {
  return {
    partNumber: '00480121',
    kind: 'genuine',
    maker: 'Ostrel',
    description: 'Drain pump',
    verdict: 'fits',
    reasons: [],
    ask: [],
    askChosen: null,
    alsoNeeds: [],
    supersededBy: null,
    cautions: [],
    onHand: [],
    price: null,
    ...given,
  }
}
