import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { FitAnswer } from '../../../shared-schemas/fit-check.ts'
import { openTestShop } from '../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

const models = ['OW 4512/01', 'OW 4512/02', 'OW 4530/01', '4821-07'] as const
const parts = ['0048-0121', '0048-0122', '0048-0123', 'PX 7', '1E5'] as const
const questions = [...models, 'OW 45', 'OW 4512', 'OW 4512/0?'].flatMap(model =>
  parts.map(part => ({ model, part })),
)

const told = fc.record({
  model: fc.constantFrom(...models),
  part: fc.constantFrom(...parts),
  does: fc.constantFrom('confirm', 'return', 'settle'),
})

test('whatever is recorded and settled, every verdict and everything beside stays; only cautions and notes come', {
  timeout: 60_000,
}, async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(told, { minLength: 1, maxLength: 6 }), async story => {
      const shop = await openTestShop(smallCatalogue)
      const judgeAll = () =>
        Promise.all(questions.map(question => shop.answer('fit-check.judge-fit', question)))
      const before = await judgeAll()
      const waiting: string[] = []
      for (const { model, part, does } of story) {
        const about = { model, part, initials: 'AB' }
        if (does === 'confirm')
          await shop.answer('fit-check.record-fit', { ...about, kind: 'confirmed', job: 'J1' })
        else if (does === 'return') {
          const told = { ...about, kind: 'wrong-fit', reason: 'too wide' } as const
          waiting.push((await shop.answer('fit-check.record-fit', told)).recordId)
        } else {
          const recordId = waiting.pop()
          if (recordId === undefined) continue
          await shop.answer('fit-check.settle-wrong-fit', { recordId, how: 'found out', initials: 'AB' })
        }
      }
      const after = await judgeAll()
      expect(after.map(withoutRecords)).toEqual(before.map(withoutRecords))
      const warned = new Set(
        after.flatMap(({ cautions }) => cautions.flatMap(({ recordId }) => recordId ?? [])),
      )
      expect([...warned].filter(recordId => !waiting.includes(recordId))).toEqual([])
      shop.close()
    }),
    { numRuns: 25 },
  )
})

function withoutRecords(answer: FitAnswer): FitAnswer {
  return {
    ...answer,
    reasons: answer.reasons.filter(({ code }) => code !== 'confirmed'),
    cautions: answer.cautions.filter(({ code }) => code !== 'wrong-fit-returned'),
  }
}
