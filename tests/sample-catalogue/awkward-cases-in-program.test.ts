import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openApplication } from '../../electron/application.ts'
import { inMemory } from '../../electron/database/open-database.ts'
import type { AwkwardQuestion } from '../../sample-catalogue/awkward/awkward-case.ts'
import { awkwardCases } from '../../sample-catalogue/awkward-cases.ts'
import { buildCatalogue } from '../../sample-catalogue/build-catalogue.ts'
import type { Catalogue } from '../../sample-catalogue/catalogue-rows.ts'
import { seededRandom } from '../../sample-catalogue/seeded-random.ts'
import { judgeFit } from '../../shared-schemas/fit-check.ts'
import { makeBruteForce } from './brute-force-verdict.ts'

/** In milliseconds: a few seconds' work, on a machine that does much else. */
const slowMachine = 60_000

/**
 * Every awkward question put to the whole program: the sample's own files, loaded by the program's loader, looked up
 * and judged through the one door that the counter asks through.
 */
const defects: unknown[] = []
let count = 0
const application = openApplication({
  databaseFile: inMemory,
  sampleFolder: join(import.meta.dirname, '../../sample-catalogue'),
  now: () => new Date('2026-11-23T08:00:00Z'),
  newId: () => {
    count += 1
    return `01935740-0000-7000-8000-${String(count).padStart(12, '0')}`
  },
  device: 'counter',
  logDefect: (...defect) => defects.push(defect),
})

beforeAll(async () => {
  const startUp = await application.opened
  expect(startUp, JSON.stringify([startUp, defects.map(String)])).toMatchObject({
    state: 'ready',
    sampleShop: true,
  })
}, slowMachine)

afterAll(() => application.close())

const questions = awkwardCases.flatMap(({ name, questions: asked }) =>
  asked.map(question => ({ name, question })),
)

describe('the awkward cases, asked of the program', () => {
  test.each(questions)(
    '$name: $question.model, $question.part -> $question.verdict',
    async ({ question }) => {
      const answer = await judge(question)
      expect(answer.verdict, JSON.stringify(answer.reasons)).toBe(question.verdict)
      expect(answer.alsoNeeds).toEqual(question.alsoNeeds ?? [])
      if (question.asks !== undefined)
        expect(answer.ask.map(({ reading }) => reading)).toEqual([question.asks])
      if (question.current !== undefined) expect(answer.part.current).toBe(question.current)
    },
  )

  test('every verdict names its reason, and a yes its source', async () => {
    for (const { question } of questions) {
      const { verdict, reasons } = await judge(question)
      const said = `${question.model}, ${question.part}`
      expect(reasons.length, said).toBeGreaterThan(0)
      if (verdict !== 'fits' && verdict !== 'fits-with-changes') continue
      expect(reasons.filter(({ source }) => source !== null).length, said).toBeGreaterThan(0)
    }
  })
})

/**
 * Beyond what was planted: models and parts drawn from the ordinary catalogue, judged by the program and, independently
 * of it, by going through every way things may be.
 */
describe('ordinary questions, drawn by number', () => {
  const catalogue = buildCatalogue()
  const bruteForce = makeBruteForce(catalogue)
  const drawn = drawQuestions(catalogue).map(question => ({ question, expected: bruteForce(question) }))

  test('they call for every verdict', () => {
    const verdicts = new Set(drawn.map(({ expected }) => expected.verdict))
    expect(verdicts).toEqual(new Set(['fits', 'fits-with-changes', 'ask', 'does-not-fit', 'no-record']))
  })

  test(
    'the program answers as brute force does',
    async () => {
      const differing: unknown[] = []
      for (const { question, expected } of drawn) {
        const answer = await judge(question)
        if (answer.verdict !== expected.verdict) {
          differing.push({
            question,
            expected: expected.verdict,
            answer: answer.verdict,
            reasons: answer.reasons,
          })
        }
        if (expected.verdict === 'fits-with-changes') expect(answer.alsoNeeds).toEqual(expected.alsoNeeds)
      }
      expect(differing).toEqual([])
    },
    slowMachine,
  )
})

type Question = Omit<AwkwardQuestion, 'verdict'>

/** Fitments drawn from a seed, each asked of a part of its family: the one listed or any other, with a year for one in three. */
function drawQuestions(catalogue: Catalogue): Question[] {
  const familyOfPart = new Map(catalogue['parts.csv'].map(row => [row.part_number, row.family]))
  const partsOfFamily = Map.groupBy(catalogue['parts.csv'], row => row.family)
  const random = seededRandom('ordinary questions')
  const listed = catalogue['fitments.csv'].filter(row => !/[*?]/.test(row.model_number))
  return Array.from({ length: 400 }, () => {
    const row = random.pick(listed)
    const family = row.family || (familyOfPart.get(row.part_number) ?? '')
    const part = random.chance(0.3) && row.part_number !== '' ? row.part_number : undefined
    const year = random.chance(0.33) ? { made: String(random.between(2008, 2022)) } : {}
    return {
      brand: row.brand,
      model: row.model_number,
      part: part ?? random.pick(partsOfFamily.get(family) ?? []).part_number,
      ...year,
    }
  })
}

async function judge({ brand, model, part, made, serial, volts, hertz }: Question) {
  const readings = { brand, made, serial, volts, hertz }
  const read = Object.fromEntries(Object.entries(readings).filter(([, value]) => value !== undefined))
  const reply = await application.ask('fit-check.judge-fit', { model, part, ...read })
  if (!reply.ok) throw new Error(`${JSON.stringify(reply.problem)} ${defects.map(String).join('; ')}`)
  return judgeFit.output.parse(reply.value)
}
