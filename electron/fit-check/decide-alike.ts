import { decideFit, type FitDecision } from './decide-fit.ts'
import type { ModelFacts, PartDossier, Statement } from './part-dossier.ts'
import type { Readings } from './suppose-appliances.ts'

/**
 * Decides part after part over the same open models, each as `decideFit` would. Of parts of one family of which the
 * same is said for these models, and which state the same, one is decided and the others differ only in their names.
 */
export function decideAlike(
  models: readonly ModelFacts[],
  readings: Readings,
): (dossier: PartDossier) => FitDecision {
  const nameSaid = rememberWhoIsSaid(models)
  const decided = new Map<string, { readonly heard: PartDossier; readonly decision: FitDecision }>()
  return asked => {
    const heard = { ...asked, statements: asked.statements.filter(said => isHeard(said, nameSaid)) }
    if (!isOnItsOwn(heard)) return decideFit(asked, models, readings)
    const name = nameAlike(heard, nameSaid)
    const known = decided.get(name)
    if (known !== undefined) return rename(known, heard)
    const decision = decideFit(asked, models, readings)
    decided.set(name, { heard, decision })
    return decision
  }
}

/** What is said of none of the models is not heard, unless it may tell of serials. */
function isHeard(statement: Statement, nameSaid: (statement: Statement) => string): boolean {
  return statement.serial !== null || nameSaid(statement) !== ''
}

/** A part that replaces none, is replaced by none, and comes and goes alone: its number is the only one in its answers. */
function isOnItsOwn({ parts, replacements, replacedTogether, contents, kitsWith }: PartDossier): boolean {
  const company = replacements.length + replacedTogether.size + contents.size + kitsWith.size
  return parts.size === 1 && company === 0
}

/** By statement, for which of the models it is said, in a few characters; empty where for none. */
function rememberWhoIsSaid(models: readonly ModelFacts[]): (statement: Statement) => string {
  const known = new Map<number, string>()
  const numbers = new Map<string, string>()
  return ({ termsId }) => {
    const found = known.get(termsId)
    if (found !== undefined) return found
    const at = models.flatMap((model, index) => (model.termsIds.has(termsId) ? [index] : [])).join()
    const name = at === '' ? '' : (numbers.get(at) ?? String(numbers.size + 1))
    numbers.set(at, name)
    known.set(termsId, name)
    return name
  }
}

/** Everything by which a part of a family may be decided otherwise than another of it. */
function nameAlike({ asked, statements }: PartDossier, nameSaid: (statement: Statement) => string): string {
  return JSON.stringify([
    asked.familyId,
    [...asked.attributes],
    statements.map(statement => {
      const { says, partId, made, serial, position, quantity, source } = statement
      const conditions = [String(made.first), String(made.last), serial?.from, serial?.to, position, quantity]
      return [nameSaid(statement), says, partId === null, ...conditions, source]
    }),
  ])
}

/** The decision on one part as that on another of which the same is said, statement by statement. */
function rename(
  { heard, decision }: { readonly heard: PartDossier; readonly decision: FitDecision },
  { asked, statements }: PartDossier,
): FitDecision {
  const { partId } = asked
  const instead = new Map(heard.statements.map((statement, at) => [statement, statements[at] ?? statement]))
  return {
    ...decision,
    current: decision.current === null ? null : partId,
    chain: [partId],
    answers: decision.answers.map(answer => ({
      ...answer,
      current: partId,
      chain: [partId],
      statements: answer.statements.map(statement => instead.get(statement) ?? statement),
    })),
  }
}
