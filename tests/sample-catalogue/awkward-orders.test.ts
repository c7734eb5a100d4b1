import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openApplication } from '../../electron/application.ts'
import { inMemory } from '../../electron/database/open-database.ts'
import { awkwardCases } from '../../sample-catalogue/awkward-cases.ts'
import type { CheckedOrder } from '../../shared-schemas/order-check.ts'

/** In milliseconds: a few seconds' work, on a machine that does much else. */
const slowMachine = 60_000

/** Every awkward question that an order can ask, as the lines of one order for the whole program on its own sample. */
let count = 0
const defects: unknown[] = []
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

// An order has no columns for volts and hertz.
const questions = awkwardCases
  .flatMap(({ name, questions: asked }) => asked.map(question => ({ name, question })))
  .filter(({ question: { volts, hertz } }) => volts === undefined && hertz === undefined)

let checked: CheckedOrder
beforeAll(async () => {
  const startUp = await application.opened
  expect(startUp, JSON.stringify([startUp, defects.map(String)])).toMatchObject({ state: 'ready' })
  const reply = await application.ask('order-check.check-order', {
    lines: questions.map(({ question: { part, model, brand, made, serial } }, at) => ({
      line: at + 2,
      partNumber: part,
      quantity: 1,
      modelNumber: model,
      ...(brand === undefined ? {} : { brand }),
      ...(made === undefined ? {} : { made }),
      ...(serial === undefined ? {} : { serial }),
    })),
  })
  if (!reply.ok) throw new Error(JSON.stringify(reply.problem))
  // The reply is to this very request, so its value is that request's output.
  checked = reply.value as CheckedOrder
}, slowMachine)

afterAll(() => application.close())

test('there are enough of them to mean something', () => {
  expect(questions.length).toBeGreaterThan(40)
  expect(new Set(questions.map(({ question }) => question.verdict)).size).toBe(5)
})

test.each(questions.map((asked, at) => ({ ...asked, at })))(
  '$name: $question.model, $question.part -> $question.verdict',
  ({ question, at }) => {
    const line = checked.lines[at]
    expect(line?.verdict).toBe(question.verdict)
    const fitStops = (line?.flags ?? []).filter(
      ({ code, severity }) => severity === 'stop' && code !== 'superseded-not-listed',
    )
    // Nothing but a proved yes goes unstopped, and a proved yes is not stopped for its fit.
    const isYes = question.verdict === 'fits' || question.verdict === 'fits-with-changes'
    expect(fitStops.length > 0, JSON.stringify(fitStops)).toBe(!isYes)
    for (const need of question.alsoNeeds ?? [])
      expect(line?.flags.find(({ code }) => /^(needed-part|replaced-together)/.test(code))?.text).toContain(
        need,
      )
    if (question.current !== undefined) expect(line?.orderNumber).toBe(question.current)
  },
)
