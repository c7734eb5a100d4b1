import { expect, test } from 'vitest'
import {
  type CounterEnquiry,
  type EnquiryStep,
  emptyEnquiry,
  isMadeUnreadable,
  questionOf,
  takeStep,
} from '../../../renderer/counter/counter-enquiry.ts'
import { makeCandidate } from '../../builders/model-candidate.ts'

const after = (...steps: EnquiryStep[]): CounterEnquiry => steps.reduce(takeStep, emptyEnquiry)
const model = makeCandidate('ODW4530/02')

test('the question holds what was typed and read, and nothing that was not', () => {
  const enquiry = after(
    { do: 'type-plate', text: ' ODW4530 ' },
    { do: 'read-field', field: 'volts', value: ' 230 ' },
    { do: 'read-field', field: 'made', value: '06/2014' },
  )
  expect(questionOf(enquiry)).toEqual({ model: 'ODW4530', volts: '230', made: '2014-06' })
})

test('a model that was taken is asked about by its own number and maker', () => {
  const enquiry = after({ do: 'type-plate', text: 'ODW4530' }, { do: 'take', model })
  expect(questionOf(enquiry)).toEqual({ model: 'ODW4530/02', brand: 'Ostrel' })
})

test('another number lets go of the model, the family and what was measured for the last one', () => {
  const enquiry = after(
    { do: 'type-plate', text: 'ODW4530' },
    { do: 'take', model },
    { do: 'open-family', family: 'drain-pump' },
    { do: 'measure', attribute: 'thread', value: 'G 3/4' },
    { do: 'type-plate', text: 'ODW4531' },
  )
  expect(questionOf(enquiry)).toEqual({ model: 'ODW4531' })
  expect(enquiry.openFamily).toBeNull()
})

test('the chosen maker narrows the question', () => {
  expect(
    questionOf(after({ do: 'type-plate', text: '1X8' }, { do: 'choose-brand', brand: 'Ixalto' })),
  ).toEqual({
    model: '1X8',
    brand: 'Ixalto',
  })
})

test('a date that is none is said so and is not used', () => {
  const enquiry = after({ do: 'type-plate', text: 'X1' }, { do: 'read-field', field: 'made', value: '14th' })
  expect(isMadeUnreadable(enquiry)).toBe(true)
  expect(questionOf(enquiry)).toEqual({ model: 'X1' })
})

test('what was measured on the old part goes along by its attribute', () => {
  const enquiry = after(
    { do: 'type-plate', text: 'X1' },
    { do: 'measure', attribute: 'thread', value: 'G 3/4' },
  )
  expect(questionOf(enquiry)).toEqual({ model: 'X1', measured: { thread: 'G 3/4' } })
})
