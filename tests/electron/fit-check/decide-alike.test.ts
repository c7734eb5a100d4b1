import { expect, test } from 'vitest'
import { decideAlike } from '../../../electron/fit-check/decide-alike.ts'
import { decideFit } from '../../../electron/fit-check/decide-fit.ts'
import type { ModelFacts, PartDossier } from '../../../electron/fit-check/part-dossier.ts'
import { asReadings } from '../../../electron/fit-check/read-question.ts'
import type { PartNumber } from '../../../shared-schemas/identifiers.ts'
import { aDossier, aModel, aPart, aStatement, familyIdOf, partIdOf } from '../../builders/fit-dossier.ts'
import { generateQuestion, seededPicker } from './soundness/generate-questions.ts'

const siblings = 6

test('many parts decided together are decided as each by itself, over generated catalogues', () => {
  const counted = { copied: 0, decided: 0, asked: 0 }
  for (let seed = 1; seed <= 150; seed++) {
    const { dossiers, models, plate } = generateFamily(seed)
    const readings = asReadings(plate)
    const decide = decideAlike(models, readings)
    const decisions = dossiers.map(dossier => decide(dossier))
    for (const [at, dossier] of dossiers.entries())
      expect(decisions[at], `seed ${seed}, part ${at}`).toEqual(decideFit(dossier, models, readings))
    // A copied decision shares its counts with the one that it was copied from.
    const own = new Set(decisions.map(decision => decision.models)).size
    counted.decided += own
    counted.copied += decisions.length - own
    counted.asked += decisions.filter(({ verdict }) => verdict === 'ask').length
  }
  for (const count of Object.values(counted)) expect(count).toBeGreaterThan(100)
})

/** A generated part with its own company, and parts of the same family that stand alone, much alike among themselves. */
function generateFamily(seed: number) {
  const { dossier, models, plate } = generateQuestion(seed)
  const from = seededPicker(seed + 1_000_000)
  const ofFamily = dossier.statements.filter(({ familyId }) => familyId !== null)
  const ofParts = dossier.statements.filter(({ partId }) => partId !== null)
  const terms = new Map(models.map(model => [model, new Set(model.termsIds)]))
  const alone = Array.from({ length: siblings }, (_, at): PartDossier => {
    const id = 201 + at
    const said = ofParts.filter(() => from.chance(0.6))
    const statements = said.map((statement, nth) => {
      const termsId = id * 100 + nth
      for (const [model, ids] of terms)
        if (model.termsIds.has(statement.termsId) && from.chance(0.95)) ids.add(termsId)
      return { ...statement, termsId, partId: partIdOf(id) }
    })
    const attributes = from.chance(0.6) ? new Map<string, string>() : dossier.asked.attributes
    const part = aPart(id, { partNumber: `S${id}` as PartNumber, attributes })
    const [family] = dossier.families.values()
    return {
      ...aDossier({ parts: [part], statements: [...statements, ...ofFamily] }),
      families: new Map(family === undefined ? [] : [[familyIdOf(1), family]]),
    }
  })
  const withTerms: ModelFacts[] = models.map(model => ({ ...model, termsIds: terms.get(model) ?? new Set() }))
  return { dossiers: [dossier, ...alone], models: withTerms, plate }
}

const nothingRead = { made: null, serial: null, stated: new Map<string, string>() }

test('a copied decision names its own part and its own statements', () => {
  const models = [aModel('WX1', { terms: [1, 2] })]
  const decide = decideAlike(models, nothingRead)
  const decisions = [1, 2].map(id =>
    decide(aDossier({ parts: [aPart(id)], statements: [aStatement(id, { part: id })] })),
  )
  for (const [at, { verdict, current, chain, answers }] of decisions.entries()) {
    const id = partIdOf(at + 1)
    expect({ verdict, current, chain }).toEqual({ verdict: 'fits', current: id, chain: [id] })
    expect(answers.map(({ statements }) => statements.map(({ termsId }) => termsId))).toEqual([[at + 1]])
  }
  expect(decisions[1]?.models).toBe(decisions[0]?.models)
})

test.each([
  ['another quantity', aStatement(2, { part: 2, quantity: 2 })],
  ['another source', aStatement(2, { part: 2, source: 'another list' })],
  ['another position', aStatement(2, { part: 2, position: 'left' })],
  ['other dates', aStatement(2, { part: 2, made: { from: '2014' } })],
  ['other serials', aStatement(2, { part: 2, serial: { from: '5', to: null } })],
  ['the contrary', aStatement(2, { part: 2, says: 'excludes' })],
  ['other models', aStatement(3, { part: 2 })],
])('a part of which %s is said is decided by itself', (_, other) => {
  const models = [aModel('WX1', { terms: [1, 2, 3] }), aModel('WX2', { terms: [1, 2] })]
  const decide = decideAlike(models, nothingRead)
  const one = decide(aDossier({ parts: [aPart(1)], statements: [aStatement(1, { part: 1 })] }))
  const dossier = aDossier({ parts: [aPart(2)], statements: [other] })
  const decision = decide(dossier)
  expect(decision).toEqual(decideFit(dossier, models, nothingRead))
  expect(decision.models).not.toBe(one.models)
})
