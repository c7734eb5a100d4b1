import { expect, test } from 'vitest'
import { choosePlateQuestion } from '../../../renderer/counter/choose-plate-question.ts'
import type { AskedReading, FitAnswer } from '../../../shared-schemas/fit-check.ts'
import { makeFamily } from '../../builders/fitting-family.ts'

const made: AskedReading = {
  reading: 'made',
  means: [{ value: 'to 2014-05', verdict: 'fits' }],
  text: 'Read the date of making: to 2014-05 fits.',
}
const ninth: AskedReading = {
  reading: 'model-number',
  positions: [9],
  text: 'Read character 9 of the model number.',
}
const waits = (name: string, ask: readonly AskedReading[]) =>
  makeFamily(name, { verdict: 'ask', parts: [{ ask: [...ask], askChosen: 'fewest' }] })
const nothing = { families: [], openFamily: undefined, part: undefined }

test('nothing waits, nothing is asked', () => {
  expect(choosePlateQuestion({ ...nothing, families: [makeFamily('pump')] })).toBeNull()
})

test('of several readings the one that most families wait for is asked', () => {
  const families = [waits('a', [made]), waits('b', [ninth]), waits('c', [ninth])]
  expect(choosePlateQuestion({ ...nothing, families })).toMatchObject({
    readings: [{ reading: 'model-number', positions: [9] }],
    sentence: 'Read character 9 of the model number: it decides 2 families below.',
  })
})

test('where as many wait for either, the number is read first', () => {
  const families = [waits('a', [made]), waits('b', [ninth])]
  expect(choosePlateQuestion({ ...nothing, families })?.readings[0]?.reading).toBe('model-number')
})

test('over many families the values are not shown, because each means something else by them', () => {
  const question = choosePlateQuestion({ ...nothing, families: [waits('a', [made])] })
  expect(question?.readings[0]).not.toHaveProperty('means')
})

test('a family with a part that fits already asks for nothing', () => {
  const family = makeFamily('valve', { verdict: 'fits', parts: [{}, { verdict: 'ask', ask: [made] }] })
  expect(choosePlateQuestion({ ...nothing, families: [family] })).toBeNull()
})

test('the family that is open asks its own question, with what its values mean', () => {
  const open = waits('a', [made])
  expect(
    choosePlateQuestion({
      families: [open, waits('b', [ninth]), waits('c', [ninth])],
      openFamily: open,
      part: undefined,
    }),
  ).toEqual({ readings: [made], sentence: made.text, chosen: 'fewest' })
})

test('the part in the hand goes before everything', () => {
  const part: FitAnswer = {
    verdict: 'ask',
    part: { typed: '1', partNumber: '1', current: null, chain: [], family: null, description: null },
    models: { open: 2, yes: 1, no: 1, undecided: 0 },
    model: null,
    quantityPerAppliance: null,
    reasons: [],
    ask: [ninth],
    askChosen: 'fewest',
    cautions: [],
    insteadTry: [],
    hints: [],
    why: null,
    alsoNeeds: [],
  }
  const open = waits('a', [made])
  expect(choosePlateQuestion({ families: [open], openFamily: open, part })?.readings).toEqual([ninth])
  expect(choosePlateQuestion({ families: [open], openFamily: open, part: { ...part, ask: [] } })).toBeNull()
})
