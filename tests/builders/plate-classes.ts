import { normaliseNumber } from '../../electron/catalogue/normalise-number.ts'
import { damageKey } from './plate-damage.ts'

type Choose = (below: number) => number

interface PrintedModel {
  readonly brand: string
  readonly modelNumber: string
}

/** One of the ways in which the number of a model reaches the counter. */
export interface PlateClass {
  readonly name: string
  readonly read: (model: PrintedModel, choose: Choose) => string
}

const suffixLeftOut = ({ modelNumber }: PrintedModel) =>
  normaliseNumber(modelNumber.replace(/[/ -][^/ -]*$/, ''))

const keyed =
  (...damages: readonly Parameters<typeof damageKey>[1][]): PlateClass['read'] =>
  ({ modelNumber }, choose) =>
    damages.reduce((key, damage) => damageKey(key, damage, choose), normaliseNumber(modelNumber))

/** The fifteen classes that the look-up is measured on. */
export const plateClasses: readonly PlateClass[] = [
  { name: 'as printed', read: ({ modelNumber }) => modelNumber },
  {
    name: 'other separators and case',
    read: ({ modelNumber }, choose) =>
      modelNumber.replaceAll(/[^0-9A-Z]/g, () => ['', ' ', '-', '.'][choose(4)] ?? '').toLowerCase(),
  },
  { name: 'one lookalike', read: keyed('lookalike') },
  { name: 'two lookalikes', read: keyed('lookalike', 'lookalike') },
  { name: 'wrong character', read: keyed('wrong character') },
  { name: 'missing character', read: keyed('missing character') },
  { name: 'added character', read: keyed('added character') },
  { name: 'doubled character', read: keyed('doubled character') },
  { name: 'swapped neighbours', read: keyed('swapped neighbours') },
  { name: 'suffix left out', read: suffixLeftOut },
  {
    name: 'head left out',
    read: ({ modelNumber }, choose) => normaliseNumber(modelNumber).slice(1 + choose(2)),
  },
  { name: 'middle only', read: (model, choose) => suffixLeftOut(model).slice(1 + choose(2)) },
  {
    name: 'suffix left out, one lookalike',
    read: (model, choose) => damageKey(suffixLeftOut(model), 'lookalike', choose),
  },
  {
    name: 'swapped neighbours and a wrong character',
    read: keyed('swapped neighbours', 'wrong character'),
  },
  {
    name: 'among labels, brand and serial, one lookalike',
    read: (model, choose) =>
      [
        model.brand,
        ['MOD.', 'MODEL', 'Type', 'PROD. NR'][choose(4)],
        damageKey(normaliseNumber(model.modelNumber), 'lookalike', choose),
        '230V 50Hz',
        `S/N ${10_000_000 + choose(89_999_999)}`,
      ].join(' '),
  },
]
