import type { PartId, PartNumber } from '../../shared-schemas/identifiers.ts'
import type { AttributeRule } from './compare-attributes.ts'
import { countPerAppliance } from './count-per-appliance.ts'
import { followToCurrent, type Predecessor, predecessorsOf, twinsOf } from './follow-supersessions.ts'
import { covers, type DaySpan } from './made-dates.ts'
import type { FamilyFacts, PartDossier, PartFacts, Statement } from './part-dossier.ts'
import { replaceTogether, type Together, withoutContents } from './replace-together.ts'

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
  /** What must be bought besides, each number once: for the replacement, and to be replaced together. */
  readonly alsoNeeds: readonly PartNumber[]
  /** For a yes: what goes in together with the part, whatever provides it. */
  readonly together: readonly Together[]
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
 * fits wherever a part fits whose place it takes; and a disagreeing attribute forbids what a statement allows. What
 * is replaced together with the part must be bought besides, unless the part is a kit that it comes in.
 */
export function decideWithAllReadings(dossier: PartDossier, appliance: KnownAppliance): KnownAnswer {
  const { partId, chain, alsoNeeds } = followToCurrent(
    dossier.asked.partId,
    dossier.replacements,
    appliance.made,
  )
  const heard = hear(dossier, appliance, partId)
  const said = weigh(heard, { family: partAndFamily(dossier, partId).family, neededAnyhow: alsoNeeds })
  const answer = { current: partId, chain, together: [], disagreeing: [] }
  if (said.outcome !== 'yes') return { ...answer, ...said, alsoNeeds: [] }
  const disagreeing = disagreeingAttributes(dossier, appliance, partId, said.because === 'listed-family')
  if (disagreeing.length === 0)
    return { ...answer, ...said, ...bought(dossier, { partId, heard, said, forReplacing: alsoNeeds }) }
  return { ...answer, ...said, outcome: 'no', because: 'attribute-disagrees', alsoNeeds: [], disagreeing }
}

/** What must be bought besides a part that goes in, and what is replaced together with it. */
function bought(
  dossier: PartDossier,
  { partId, heard, said, forReplacing }: BoughtPart,
): Pick<KnownAnswer, 'alsoNeeds' | 'together'> {
  const replacing = withoutContents(dossier, partId, [...new Set([...forReplacing, ...said.alsoNeeds])])
  const together = replaceTogether(dossier, {
    partId,
    standsFor: heard.replaced.needs.keys(),
    perAppliance: countPerAppliance(said.statements),
    alsoNeeds: replacing,
  })
  const besides = together.filter(({ from }) => from === 'besides').map(({ partNumber }) => partNumber)
  return { alsoNeeds: [...replacing, ...besides], together }
}

interface BoughtPart {
  readonly partId: PartId
  readonly heard: Heard
  readonly said: Weighed
  readonly forReplacing: readonly PartNumber[]
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

interface Besides {
  readonly family: FamilyFacts
  /** On the way from the number asked for to the current one. */
  readonly neededAnyhow: readonly PartNumber[]
}

function weigh(
  { own, replaced, family }: Heard,
  { family: { safetyDevice }, neededAnyhow }: Besides,
): Weighed {
  if (forbidsEverywhere(own)) return no('excluded-part', own.excludes)
  const listed = outside(own.excludes, own.includes)
  if (listed.length > 0) return yes('listed-part', listed)
  const asReplaced = outside(own.excludes, replaced.includes)
  if (asReplaced.length > 0) return yesAsReplaced(asReplaced, replaced.needs, neededAnyhow)
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

/** Of several listed parts whose place it takes, the one that leaves least to buy, together with what is needed anyhow. */
function yesAsReplaced(
  includes: readonly Statement[],
  needs: ReadonlyMap<PartId, Predecessor>,
  neededAnyhow: readonly PartNumber[],
): Weighed {
  const ways = includes.map(statement => {
    const needed = (statement.partId !== null && needs.get(statement.partId)?.alsoNeeds) || []
    const all = [...new Set([...neededAnyhow, ...needed])].sort()
    return { statement, needed, all, name: all.join() }
  })
  ways.sort(
    (one, other) =>
      one.all.length - other.all.length || (one.name < other.name ? -1 : one.name > other.name ? 1 : 0),
  )
  const statements = ways.map(({ statement }) => statement)
  return { ...yes('listed-as-replaced', statements), alsoNeeds: ways[0]?.needed ?? [] }
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
