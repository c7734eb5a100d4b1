import { expect, test } from 'vitest'
import { type Slip, wordSlip } from '../../../renderer/counter/slip-text.ts'

const plain: Slip = {
  shop: 'Sallowbridge Spares, Weir Lane',
  appliance: {
    typed: 'odw4512/01',
    readings: {},
    model: { brand: 'Ostrel', modelNumber: 'ODW4512/01', applianceType: 'dishwasher' },
    openModels: 1,
    isTaken: false,
  },
  part: { typed: '00480121', partNumber: '00480121', current: '00480121', description: 'Inlet valve' },
  verdict: 'fits',
  quantityPerAppliance: 1,
  reasons: [
    { code: 'listed-family', text: 'Inlet valve: listed.', source: 'Tarrow supplier list' },
    { code: 'attribute-agrees', text: 'bore: part 10.5, appliance 10.5; agrees.', source: null },
  ],
  ask: [],
  alsoNeeds: [],
  cautions: [{ code: 'water', text: 'Turn the water off.' }],
}
const lines = (given: Partial<Slip>) => wordSlip({ ...plain, ...given }).split('\n')

test('a slip says model, part, answer, who says so, what was assumed, and the cautions', () => {
  expect(wordSlip(plain)).toBe(
    [
      'Sallowbridge Spares, Weir Lane',
      '',
      'Appliance: Ostrel ODW4512/01, dishwasher',
      'Part: 00480121, Inlet valve',
      'Answer: Fits.',
      'Because: Inlet valve: listed. (Tarrow supplier list)',
      'Assumed: the plate reads “odw4512/01”.',
      'Caution: Turn the water off.',
    ].join('\n'),
  )
})

test('an open question is never worded as a yes, and says what to read', () => {
  const slip = lines({ verdict: 'ask', ask: [{ reading: 'made', text: 'Read the date of making.' }] })
  expect(slip).toContain('Answer: Cannot be said yet.')
  expect(slip).toContain('To be sure: Read the date of making.')
})

test('no record is said not to be a yes', () => {
  expect(lines({ verdict: 'no-record' })).toContain('Answer: No record; this is not a yes.')
})

test('with several models open a yes says that it holds for each; a no is a no', () => {
  const several = { ...plain.appliance, typed: 'ODW4540', model: null, openModels: 4 }
  expect(lines({ appliance: several })).toContain('Appliance: “ODW4540”, 4 models open')
  expect(lines({ appliance: several })).toContain('Answer: Fits, whichever model it is.')
  expect(lines({ appliance: several, verdict: 'does-not-fit' })).toContain('Answer: Does not fit.')
})

test('a replaced number says what it was asked for as, and what must be bought besides', () => {
  const slip = lines({
    verdict: 'fits-with-changes',
    part: { ...plain.part, typed: 'TQ0030001', partNumber: 'TQ0030001', current: 'TQ0030002' },
    alsoNeeds: ['TQ0030009'],
  })
  expect(slip).toContain('Part: TQ0030002, Inlet valve; asked for as TQ0030001')
  expect(slip).toContain('Answer: Fits, with changes. Also needed: TQ0030009.')
})

test('more than one to an appliance is said', () => {
  expect(lines({ quantityPerAppliance: 8 })).toContain('Part: 00480121, Inlet valve; the appliance takes 8')
})

test('a model chosen at the counter, and every reading used, are named as assumed', () => {
  const slip = lines({
    appliance: {
      ...plain.appliance,
      typed: 'ODW45',
      isTaken: true,
      readings: { made: '2014-05', measured: { thread: 'G 3/4' } },
    },
  })
  expect(slip).toContain('Assumed: the plate reads “ODW45”, made 2014-05, thread G 3/4.')
  expect(slip).toContain('Assumed: the appliance is Ostrel ODW4512/01, as chosen at the counter.')
})

test('what the shop pays is nowhere on a slip', () => {
  expect(wordSlip(plain)).not.toMatch(/[£€]|\bpay\b/)
})
