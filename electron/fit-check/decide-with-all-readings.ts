import type { PartId, PartNumber } from '../../shared-schemas/identifiers.ts'
import type { AttributeRule } from './compare-attributes.ts'
import { followToCurrent, type Predecessor, predecessorsOf, twinsOf } from './follow-supersessions.ts'
import { covers, type DaySpan } from './made-dates.ts'
import type { FamilyFacts, PartDossier, PartFacts, Statement } from './part-dossier.ts'

/**
 * How an attribute of the current part agrees in one supposed appliance. `not-stated` rests; `would-disagree` is a
 * supposed measurement, which counts only where nothing but the family's word carries the yes.
 */
export type SupposedAgreement = 'agrees' | 'disagrees' | 'would-disagree' | 'not-stated'

/** One appliance with nothing left unknown: made within a span that no condition divides, and so on. */
export interface KnownAppliance {
  readonly termsIds: ReadonlySet<number>
  readonly made: DaySpan
  /** Asked only of statements that name a range. */
  readonly serialInRange: (statement: Statement) => boolean
  readonly agreementOf: (part: PartFacts, rule: AttributeRule) => SupposedAgreement
}

export type Outcome = 'yes' | 'no' | 'no-record'

export interface KnownAnswer {
  readonly outcome: Outcome
  readonly current: PartId
  readonly chain: readonly PartId[]
  readonly alsoNeeds: readonly PartNumber[]
  /** What decided it. */
  readonly because: Because
  /** The statements that hold and carry a yes; for a no, those that forbid it or whose conditions fail. */
  readonly statements: readonly Statement[]
  readonly disagreeing: readonly string[]
}

export type Because =
  | 'listed-part'
  | 'listed-as-replaced'
  | 'listed-family'
  | 'excluded-part'
  | 'excluded-family'
  | 'conditions-fail'
  | 'attribute-disagrees'
  | 'safety-device-not-listed'
  | 'nothing-said'

/**
 * The verdict's rules for an appliance of which everything is known. What is said of the part, or of a twin that may
 * always stand for it, beats what is said of the family; an exclusion beats an inclusion at the same level; a part
 * fits wherever a part fits whose place it takes; and a disagreeing attribute forbids what a statement allows.
 */
export function decideWithAllReadings(dossier: PartDossier, appliance: KnownAppliance): KnownAnswer {
  const { partId, chain, alsoNeeds } = followToCurrent(
    dossier.asked.partId,
    dossier.replacements,
    appliance.made,
  )
  const heard = hear(dossier, appliance, partId)
  const said = weigh(heard, partAndFamily(dossier, partId).family)
  const needs = [...new Set([...alsoNeeds, ...said.alsoNeeds])]
  const answer = { current: partId, chain, alsoNeeds: needs, disagreeing: [] }
  if (said.outcome !== 'yes') return { ...answer, ...said, alsoNeeds: [] }
  const disagreeing = disagreeingAttributes(dossier, appliance, partId, said.because === 'listed-family')
  if (disagreeing.length === 0) return { ...answer, ...said, alsoNeeds: needs }
  return { ...answer, ...said, outcome: 'no', because: 'attribute-disagrees', alsoNeeds: [], disagreeing }
}

function disagreeingAttributes(
  dossier: PartDossier,
  { agreementOf }: KnownAppliance,
  partId: PartId,
  onFamilysWord: boolean,
): string[] {
  const { part, family } = partAndFamily(dossier, partId)
  return family.attributes
    .filter(rule => {
      const agreement = agreementOf(part, rule)
      return agreement === 'disagrees' || (agreement === 'would-disagree' && onFamilysWord)
    })
    .map(({ attribute }) => attribute)
}

interface Heard {
  readonly own: SaidOfLevel
  readonly replaced: SaidOfLevel & { readonly needs: ReadonlyMap<PartId, Predecessor> }
  readonly family: SaidOfLevel
}

interface SaidOfLevel {
  readonly includes: readonly Statement[]
  readonly excludes: readonly Statement[]
  /** Inclusions of this model whose conditions fail. */
  readonly failing: readonly Statement[]
}

function hear(dossier: PartDossier, appliance: KnownAppliance, part: PartId): Heard {
  const holding = dossier.replacements.filter(({ made }) => covers(made, appliance.made))
  const twins = new Set(twinsOf(part, holding))
  const predecessors = new Map(
    predecessorsOf(part, dossier.replacements, appliance.made).map(found => [found.partId, found]),
  )
  const familyId = partAndFamily(dossier, part).part.familyId
  const of = (isAbout: (statement: Statement) => boolean) => sortStatements(dossier, appliance, isAbout)
  return {
    own: of(({ partId }) => partId !== null && twins.has(partId)),
    replaced: {
      ...of(({ partId }) => partId !== null && predecessors.has(partId) && !twins.has(partId)),
      needs: predecessors,
    },
    family: of(statement => statement.familyId === familyId),
  }
}

function sortStatements(
  { statements }: PartDossier,
  appliance: KnownAppliance,
  isAbout: (statement: Statement) => boolean,
): SaidOfLevel {
  const said = statements.filter(statement => appliance.termsIds.has(statement.termsId) && isAbout(statement))
  const holds = (statement: Statement): boolean =>
    covers(statement.made, appliance.made) &&
    (statement.serial === null || appliance.serialInRange(statement))
  const inclusions = said.filter(({ says }) => says === 'includes')
  return {
    includes: inclusions.filter(holds),
    excludes: said.filter(statement => statement.says === 'excludes' && holds(statement)),
    failing: inclusions.filter(statement => !holds(statement)),
  }
}

type Weighed = Pick<KnownAnswer, 'outcome' | 'because' | 'statements' | 'alsoNeeds'>

function weigh({ own, replaced, family }: Heard, { safetyDevice }: FamilyFacts): Weighed {
  if (forbidsEverywhere(own)) return no('excluded-part', own.excludes)
  const listed = outside(own.excludes, own.includes)
  if (listed.length > 0) return yes('listed-part', listed)
  const asReplaced = outside(own.excludes, replaced.includes)
  if (asReplaced.length > 0) return yesAsReplaced(asReplaced, replaced.needs)
  if (own.failing.length > 0) return no('conditions-fail', own.failing)
  return weighFamily(own, replaced, family, safetyDevice)
}

function weighFamily(
  own: SaidOfLevel,
  replaced: SaidOfLevel,
  family: SaidOfLevel,
  safetyDevice: boolean,
): Weighed {
  if (forbidsEverywhere(family)) return no('excluded-family', family.excludes)
  const listed = outside([...own.excludes, ...family.excludes], family.includes)
  if (listed.length > 0) return safetyDevice ? notListed(listed) : yes('listed-family', listed)
  if (own.excludes.length > 0) return no('excluded-part', own.excludes)
  if (family.excludes.length > 0) return no('excluded-family', family.excludes)
  const failing = [...family.failing, ...replaced.failing]
  return failing.length > 0 ? no('conditions-fail', failing) : notSaid
}

function forbidsEverywhere({ excludes }: SaidOfLevel): boolean {
  return excludes.some(({ position }) => position === null)
}

/** An exclusion that names a position forbids only that position: an inclusion that names another, or none, stands. */
function outside(excludes: readonly Statement[], includes: readonly Statement[]): readonly Statement[] {
  const forbidden = new Set(excludes.map(({ position }) => position))
  return includes.filter(({ position }) => !forbidden.has(position))
}

function yesAsReplaced(includes: readonly Statement[], needs: ReadonlyMap<PartId, Predecessor>): Weighed {
  const needsOf = ({ partId }: Statement) => (partId === null ? [] : (needs.get(partId)?.alsoNeeds ?? []))
  const least = [...includes].sort((one, other) => needsOf(one).length - needsOf(other).length)
  const first = least[0]
  return { ...yes('listed-as-replaced', least), alsoNeeds: first === undefined ? [] : needsOf(first) }
}

function yes(because: Because, statements: readonly Statement[]): Weighed {
  return { outcome: 'yes', because, statements, alsoNeeds: [] }
}

function no(because: Because, statements: readonly Statement[]): Weighed {
  return { outcome: 'no', because, statements, alsoNeeds: [] }
}

/** A safety device goes in only where its own number, or one it replaces, is listed: likeness is not enough. */
function notListed(statements: readonly Statement[]): Weighed {
  return { outcome: 'no-record', because: 'safety-device-not-listed', statements, alsoNeeds: [] }
}

const notSaid: Weighed = { outcome: 'no-record', because: 'nothing-said', statements: [], alsoNeeds: [] }

function partAndFamily({ parts, families }: PartDossier, partId: PartId) {
  const part = parts.get(partId)
  const family = part && families.get(part.familyId)
  if (part === undefined || family === undefined)
    throw new Error(`a dossier holds every part it names and its family, but not ${partId}`)
  return { part, family }
}
