import { type AttributeRule, compareAttribute } from './compare-attributes.ts'

/** A value that some part states for an attribute, with its family's rule. */
export interface AttributeOffer {
  readonly rule: AttributeRule
  readonly offered: string
}

/** One way in which the appliance may stand to everything that is offered. */
export interface AttributeClass {
  /** The offered values that would do. */
  readonly suits: ReadonlySet<string>
  /** False where it is only supposed. */
  readonly isStated: boolean
  /** What a person would read or measure: `230 V`, `at most 16 A`, `any other`. */
  readonly words: string
}

export const anyOther = 'any other'

/**
 * The ways in which an appliance may stand to the offered values, as far as what is stated leaves open. What suits
 * changes only at the offered values themselves, so each of them, taken as the appliance's, shows one way; suiting
 * none is always another.
 */
export function classifyAttribute(
  offers: readonly AttributeOffer[],
  stated: string | undefined,
): AttributeClass[] {
  const distinct = [...new Map(offers.map(offer => [offer.offered, offer])).values()]
  const answers = distinct.map(({ rule, offered }) =>
    compareAttribute(rule, { part: offered, appliance: stated }),
  )
  const isStated = stated !== undefined && answers.every(answer => answer !== 'unknown')
  if (isStated)
    return [
      asClass(
        distinct.filter((_, at) => answers[at] === 'agrees'),
        true,
      ),
    ]
  return supposableSets(distinct)
    .filter(suiting =>
      distinct.every(
        (offer, at) => answers[at] === 'unknown' || suiting.includes(offer) === (answers[at] === 'agrees'),
      ),
    )
    .map(suiting => asClass(suiting, false))
}

function supposableSets(offers: readonly AttributeOffer[]): AttributeOffer[][] {
  const shown = offers.map(({ offered }) =>
    offers.filter(
      offer => compareAttribute(offer.rule, { part: offer.offered, appliance: offered }) === 'agrees',
    ),
  )
  const sets = [...shown, []].map(set => [set.map(({ offered }) => offered).join('\u0000'), set] as const)
  return [...new Map(sets).values()]
}

function asClass(suiting: readonly AttributeOffer[], isStated: boolean): AttributeClass {
  const words = suiting.map(wordOffer).join(' and ')
  return { suits: new Set(suiting.map(({ offered }) => offered)), isStated, words: words || anyOther }
}

/** What the reading must show for an offered value to do. */
function wordOffer({ rule: { rule, unit, tolerance }, offered }: AttributeOffer): string {
  const value = unit === '' || unit === 'text' ? offered : `${offered} ${unit}`
  switch (rule) {
    case 'equal':
      return value
    case 'within':
      return `${value} within ${Math.round((tolerance ?? 0) * 1000) / 10} %`
    case 'at-least':
      return `at most ${value}`
    case 'at-most':
      return `at least ${value}`
    case 'covers':
      return `within ${value}`
  }
}
