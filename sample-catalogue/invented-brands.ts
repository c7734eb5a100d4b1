import type { ApplianceType } from './appliance-types.ts'
import { itemAt } from './seeded-random.ts'

/** Every brand here is made up. Each numbers its machines and its parts in a way of its own. */
export type InventedBrand = {
  readonly brand: string
  readonly types: readonly ApplianceType[]
  /** The number on the rating plate: `line` is the basic number, `variant` its change of build, from 0. */
  readonly modelNumber: (type: ApplianceType, line: number, variant: number) => string
  /** The number on the door, which says nothing of the variant. */
  readonly salesName: (type: ApplianceType, line: number) => string
  /** The maker's own number of the so-manieth part. */
  readonly partNumber: (count: number) => string
}

const kitchen = ['dishwasher', 'washer', 'dryer', 'oven', 'hob', 'fridge', 'microwave'] as const
const everything = [...kitchen, 'vacuum'] as const
const wetAndCold = ['dishwasher', 'washer', 'dryer', 'fridge'] as const

/** Characters that plates and cameras confuse, in pairs. Two brands number with little else. */
const confusable = '0O1I5S8B2Z6G'

export const inventedBrands: readonly InventedBrand[] = [
  {
    brand: 'Ostrel',
    types: kitchen,
    modelNumber: (type, line, variant) =>
      `O${byType(type, ['DW', 'WM', 'TD', 'BO', 'GH', 'FF', 'MW', 'VC'])}${digits(4600 + line * 3, 4)}${itemAt(['', 'S', 'B', 'X'], line)}/${digits(variant + 1, 2)}`,
    salesName: (type, line) =>
      `${byType(type, ['Aqualane', 'Linnet', 'Sirocco', 'Ember', 'Aureole', 'Larder', 'Minute', 'Whisk'])} ${45 + line}`,
    partNumber: count => digits(480_200 + count * 7, 8),
  },
  {
    brand: 'Brennick',
    types: everything,
    modelNumber: (type, line, variant) =>
      `${47 + typeIndex(type) * 2}${digits(310_750 + line, 6)}-${digits(variant + 1, 2)}`,
    salesName: (type, line) =>
      `BR ${byType(type, ['Clean', 'Wash', 'Dry', 'Bake', 'Heat', 'Cool', 'Wave', 'Vac'])} ${200 + line * 5}`,
    // Written like a power of ten, which a spreadsheet turns into 100000 and its like.
    partNumber: count => `${1 + (count % 9)}E${digits(5300 + count, 4)}`,
  },
  {
    brand: 'Kessolm',
    types: kitchen,
    modelNumber: (type, line, variant) =>
      `${1 + typeIndex(type)}.${digits(420 + (line % 4), 3)}.${digits(350 + line, 4)}.${variant + 1}`,
    salesName: (type, line) =>
      `${byType(type, ['Spiegel', 'Welle', 'Brise', 'Glut', 'Flamme', 'Frost', 'Funke', 'Staub'])}-${10 + line}`,
    partNumber: count => `K7-${digits(358 + count, 4)}-${digits((count * 7) % 90, 2)}`,
  },
  {
    brand: 'Marrowby',
    types: everything,
    modelNumber: (type, line, variant) =>
      `M${byType(type, ['D', 'W', 'T', 'O', 'H', 'F', 'M', 'V'])} ${digits(600 + line, 3)} ${letters('SBZGOI', variant, 2)}`,
    salesName: (type, line) =>
      `${byType(type, ['Brook', 'Beck', 'Gale', 'Hearth', 'Cinder', 'Pantry', 'Jiffy', 'Broom'])} ${itemAt(['Plus', 'Duo', 'Grand', 'Slim', 'Eco', 'Classic'], line)} ${1 + Math.floor(line / 6)}`,
    partNumber: count => `MB ${digits(40 + (count % 40), 2)} ${digits(118 + count, 3)} ${count % 10}`,
  },
  {
    brand: 'Tavolme',
    types: kitchen,
    modelNumber: (type, line, variant) =>
      `TV${byType(type, ['D', 'L', 'A', 'F', 'P', 'R', 'M', 'S'])}${digits(60 + line, 2)}I${1 + (line % 5)}D${itemAt(['X', 'B', 'W'], line)}-${itemAt(['2B', '28', '2Z', '22', '5S', '55', '8G', '86'], variant)}`,
    salesName: (type, line) =>
      `${byType(type, ['Lustra', 'Lavola', 'Ariosa', 'Fornella', 'Piano', 'Gelida', 'Rapida', 'Scopa'])} ${60 + line}`,
    partNumber: count => `TQ${digits(31_845 + count * 3, 7)}`,
  },
  {
    brand: 'Wexmoor',
    types: everything,
    modelNumber: (type, line, variant) =>
      `WX${3 + typeIndex(type)}${digits(540 + line, 3)}/${itemAt([...'ABCDEFGH'], variant)}`,
    salesName: (type, line) =>
      `Wexmoor ${byType(type, ['Tarn', 'Gill', 'Fell', 'Kiln', 'Crag', 'Cave', 'Dart', 'Moor'])} ${itemAt(['I', 'II', 'III', 'IV', 'V'], line)}${line >= 5 ? itemAt(['S', 'X', 'XL'], Math.floor(line / 5)) : ''}`,
    partNumber: count => `W10/${digits(5581 + count, 4)}`,
  },
  {
    brand: 'Ixalto',
    types: kitchen,
    modelNumber: (type, line, variant) =>
      `1X${itemAt([...'80B6G5SZ'], typeIndex(type))}${letters(confusable, line * 5 + 900, 4)}${letters(confusable, variant * 2 + 26, 2)}B`,
    salesName: (type, line) =>
      `IX-${byType(type, ['Lumen', 'Nimbus', 'Zephyr', 'Solis', 'Ignis Due', 'Boreal', 'Pulse', 'Aero'])} ${line + 1}`,
    partNumber: count => `5S8B-${digits(612 + count, 4)}`,
  },
  {
    brand: 'Elmrath',
    types: wetAndCold,
    modelNumber: (type, line, variant) =>
      `E${12 + typeIndex(type)}-${digits(8810 + line, 4)}-${itemAt([...'KLMNPRST'], variant)}`,
    salesName: (type, line) =>
      `Elmrath ${byType(type, ['Quell', 'Strom', 'Wind', 'Herd', 'Feld', 'Kern', 'Blitz', 'Besen'])} ${880 + line}`,
    partNumber: count => `2.${digits(455 + (count % 5), 3)}.${digits(18 + count, 3)}`,
  },
  {
    brand: 'Dovrane',
    types: kitchen,
    modelNumber: (type, line, variant) =>
      `${33 + typeIndex(type)}${digits(10 + (line % 3), 2)}.${digits(218 + line, 3)}/${variant}`,
    salesName: (type, line) =>
      `${byType(type, ['Cascade', 'Riviere', 'Mistral', 'Foyer', 'Braise', 'Givre', 'Eclair', 'Plume'])} ${300 + line * 10}`,
    // Written like a date, which a spreadsheet turns into one.
    partNumber: count =>
      `${digits(1 + (count % 12), 2)}-${digits(1 + (count % 28), 2)}-${digits(200 + count, 3)}`,
  },
  {
    brand: 'Pirrell',
    types: everything,
    modelNumber: (type, line, variant) =>
      `PR.${80 + typeIndex(type)}.${digits(512 + line, 3)}-${letters('LSRT', variant, 2)}`,
    salesName: (type, line) =>
      `Pirrell ${byType(type, ['Otter', 'Heron', 'Swift', 'Robin', 'Finch', 'Stoat', 'Martin', 'Magpie'])} ${line + 1}`,
    partNumber: count => `PL${digits(884_120 + count * 2, 6)}`,
  },
  {
    brand: 'Hesk & Rowe',
    types: ['dishwasher', 'washer', 'dryer', 'oven', 'hob', 'fridge'],
    modelNumber: (type, line, variant) => `HR${2 + typeIndex(type)}${digits(210 + line, 3)}MK${variant + 1}`,
    salesName: (type, line) =>
      `The ${byType(type, ['Scullery', 'Laundry', 'Airing', 'Range', 'Griddle', 'Dairy', 'Canteen', 'Parlour'])} ${itemAt(['Minor', 'Major', 'Regent', 'Consort', 'Squire'], line)}${line >= 5 ? ` ${1 + Math.floor(line / 5)}` : ''}`,
    partNumber: count => `HR/${digits(5501 + count, 4)}`,
  },
  {
    brand: 'Lövane',
    types: kitchen,
    modelNumber: (type, line, variant) =>
      `LV ${140 + typeIndex(type)}-${digits(52 + line, 2)} ${itemAt([...'SBGZOIQD'], variant)}`,
    salesName: (type, line) =>
      `${byType(type, ['Bäck', 'Tvätt', 'Fläkt', 'Ugn', 'Häll', 'Kyla', 'Mikra', 'Damm'])} ${100 + line}`,
    partNumber: count =>
      `L ${digits(55 + (count % 30), 2)} ${digits(20 + (count % 70), 2)} ${digits(18 + count, 3)}`,
  },
  {
    brand: 'Jorbe',
    types: wetAndCold,
    modelNumber: (type, line, variant) =>
      `0${480 + typeIndex(type)}-${digits(5512 + line, 4)}-${digits(variant + 6, 2)}`,
    salesName: (type, line) =>
      `Jorbe ${byType(type, ['Plata', 'Lava', 'Seca', 'Horna', 'Placa', 'Fria', 'Onda', 'Suca'])} ${line + 20}`,
    partNumber: count => digits(517_384 + count * 3, 9),
  },
  {
    brand: 'Snorrel',
    types: ['vacuum', 'microwave', 'hob'],
    modelNumber: (type, line, variant) =>
      `S${byType(type, ['0', '1', '2', '3', '4', '6', '7', '5'])}B${digits(800 + line, 3)}Z/${variant + 1}`,
    salesName: (type, line) =>
      `${byType(type, ['A', 'B', 'C', 'D', 'Plate', 'F', 'Ping', 'Sniff'])} ${800 + line}`,
    partNumber: count => `SN-${digits(1800 + count, 4)}-${itemAt([...'ABZS'], count)}`,
  },
]

export const inventedBrandNamed = new Map(inventedBrands.map(invented => [invented.brand, invented]))

/** Makers of pattern parts, made up as well. */
export const patternMakers: readonly {
  readonly maker: string
  readonly partNumber: (count: number) => string
}[] = [
  { maker: 'Dalrow', partNumber: count => `DR-${digits(10_482 + count, 5)}` },
  { maker: 'Pattermill', partNumber: count => `PM${digits(7800 + count, 4)}` },
  { maker: 'Veldkade', partNumber: count => `VK ${digits(55 + (count % 20), 2)}.${digits(120 + count, 3)}` },
  { maker: 'Stavewell', partNumber: count => `SW${digits(4410 + count, 4)}E` },
]

function typeIndex(type: ApplianceType): number {
  return everything.indexOf(type)
}

function byType(type: ApplianceType, words: readonly string[]): string {
  return itemAt(words, typeIndex(type))
}

function digits(value: number, length: number): string {
  return String(value).padStart(length, '0')
}

/** A number written with letters instead of digits, so that neighbours differ in one place. */
function letters(alphabet: string, value: number, length: number): string {
  let text = ''
  let rest = value
  for (let place = 0; place < length; place += 1) {
    text = alphabet.charAt(rest % alphabet.length) + text
    rest = Math.floor(rest / alphabet.length)
  }
  return text
}
