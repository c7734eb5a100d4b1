import { describe, expect, test } from 'vitest'
import { readPlateText } from '../../../electron/model-lookup/read-plate-text.ts'
import { listKnownBrands } from '../../../electron/model-lookup/recognise-brand.ts'

const brands = listKnownBrands(['Ostrel', 'Brennick', 'Hesk & Rowe', 'Lövane'])
const names = ['AQUALANE44']

interface Expected {
  readonly kept: string
  readonly brand?: string
  readonly setAside?: string
  readonly parts?: readonly string[]
}

const check = (text: string, { kept, brand, setAside = '', parts = [] }: Expected) => {
  const readings = readPlateText(text, { brands, isName: key => names.includes(key) })
  expect(readings.kept.key).toBe(kept)
  expect(readings.kept.brand).toBe(brand)
  expect(readings.kept.setAside.map(({ word, as }) => `${word}=${as}`).join(' ')).toBe(setAside)
  expect(readings.parts.map(({ key }) => key)).toEqual(parts)
}

describe('what stands around a model number on a plate is set aside and reported', () => {
  test.each<[string, Expected]>([
    ['ODW4512/01', { kept: 'ODW451201' }],
    ['MODEL ODW4512/01', { kept: 'ODW451201', setAside: 'MODEL=label' }],
    ['Mod.: ODW4512/01', { kept: 'ODW451201', setAside: 'Mod.:=label' }],
    ['MOD.ODW4512/01', { kept: 'ODW451201', setAside: 'MOD.=label' }],
    ['SERVICE NO ODW4512/01', { kept: 'ODW451201', setAside: 'SERVICE=label NO=label' }],
    ['PROD. NR ODW4512/01', { kept: 'ODW451201', setAside: 'PROD.=label NR=label' }],
    ['Modèle ODW4512/01', { kept: 'ODW451201', setAside: 'Modèle=label' }],
    ['ODW4512/01 S/N 12345678', { kept: 'ODW451201', setAside: 'S/N=label 12345678=other-number' }],
    [
      'Ser. No. 12345678\nType ODW4512/01',
      { kept: 'ODW451201', setAside: 'Ser.=label No.=label 12345678=other-number Type=label' },
    ],
    [
      'ODW4512/01 230V~ 50Hz 2000W IPX4 38,5kg',
      { kept: 'ODW451201', setAside: '230V~=rating 50Hz=rating 2000W=rating IPX4=rating 38,5kg=rating' },
    ],
    [
      'ODW4512/01 220-240 V~ 50 Hz 2000 W',
      { kept: 'ODW451201', setAside: '220-240=rating V~=rating 50=rating Hz=rating 2000=rating W=rating' },
    ],
    ['Ostrel ODW4512/01', { kept: 'ODW451201', brand: 'Ostrel', setAside: 'Ostrel=brand' }],
    ['HESK & ROWE HR4213MK4', { kept: 'HR4213MK4', brand: 'Hesk & Rowe', setAside: 'HESK=brand ROWE=brand' }],
    ['Brenick 53310754-06', { kept: '5331075406', brand: 'Brennick', setAside: 'Brenick=brand' }],
  ])('%j', check)
})

describe('what might be part of the number stays in it', () => {
  test.each<[string, Expected]>([
    ['LV 141-54 B', { kept: 'LV14154B' }],
    ['WX4547 NO', { kept: 'WX4547NO' }],
    ['WX4547 5 A', { kept: 'WX45475A' }],
    ['MV 600 L', { kept: 'MV600L' }],
    ['SN 46 B', { kept: 'SN46B' }],
    ['ODW45?2/01', { kept: 'ODW45?201' }],
    ['ODW45？2/01', { kept: 'ODW45?201' }],
  ])('%j', check)
})

test('where nothing would be left, the text stands as it is', () => {
  check('TYPE', { kept: 'TYPE' })
  check('220-240V 50Hz', { kept: '220240V50HZ' })
})

describe('of several numbers each is tried alone, if no short word would be lost', () => {
  test.each<[string, Expected]>([
    ['ODW4512/01 12345678', { kept: 'ODW45120112345678', parts: ['ODW451201', '12345678'] }],
    ['ODW4512 7', { kept: 'ODW45127', parts: [] }],
    ['ODW4512/01\n12345678', { kept: 'ODW45120112345678', parts: ['ODW451201', '12345678'] }],
    [
      'Aqualane 44 ODW4512/01',
      { kept: 'AQUALANE44ODW451201', parts: ['44ODW451201', 'AQUALANE44', 'ODW451201'] },
    ],
  ])('%j', check)
})
