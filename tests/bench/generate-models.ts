import { normaliseNumber } from '../../electron/catalogue/normalise-number.ts'
import type { ModelRow } from '../../electron/model-lookup/index-models.ts'

/** The same seed always gives the same stream (mulberry32, a public-domain generator; from memory). */
export function seededChoice(seed: number): (below: number) => number {
  let state = seed >>> 0
  return below => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296) * below)
  }
}

/** A catalogue of invented models, numbered as densely as makers number: series that run on, variants, colours. */
export function generateModels(count: number, seed = 20261123): ModelRow[] {
  const choose = seededChoice(seed)
  const numbers = new Map<string, string>()
  while (numbers.size < count) {
    const brand = choose(brands.length)
    for (const number of numberSeries(brand, choose))
      numbers.set(normaliseNumber(number), brands[brand] ?? '')
  }
  const keys = [...numbers.keys()].slice(0, count).sort()
  return keys.map((key, at) => ({
    modelId: at + 1,
    brand: numbers.get(key) ?? '',
    modelNumber: key,
    key,
    applianceType: 'washer',
  }))
}

export const brands = ['Korrel', 'Vastrum', 'Pellow', 'Oskan', 'Drimmel', 'Tessary', 'Hulvane', 'Nordbeck']

/** One type in its variants: the neighbours that a slip in the number leads to. */
function numberSeries(brand: number, choose: (below: number) => number): string[] {
  const type = 10 + choose(90)
  const size = choose(100)
  const variants = Array.from({ length: 2 + choose(6) }, (_, at) => at + 1)
  const letters = 'ABCDEFGHKLMNPSWX'
  const letter = () => letters.charAt(choose(letters.length))
  const two = (value: number) => String(value).padStart(2, '0')
  switch (brand) {
    case 0: {
      const head = `K${letter()}D${type}${two(size)}`
      return variants.map(variant => `${head}/0${variant}`)
    }
    case 1: {
      const head = `${1000 + choose(9000)}.${two(size)}${choose(10)}`
      return variants.map(variant => `${head}/${variant}`)
    }
    case 2: {
      const head = `PL ${type}${choose(10)}-${two(size)}`
      return variants.map(() => `${head} ${letter()}`)
    }
    case 3: {
      const head = `${53000000 + choose(900000)}`
      return variants.map(variant => `${head}-0${variant}`)
    }
    case 4: {
      const head = `DR.${type}.${choose(10)}${two(size)}`
      return variants.map(() => `${head}-${letter()}${letter()}`)
    }
    case 5: {
      const head = `T${letter()}${letter()}${type}I${choose(4)}D${letter()}`
      return variants.map(variant => `${head}-${variant}${letter()}`)
    }
    case 6: {
      const head = `HV${choose(10)}${choose(10)}${two(size)}MK`
      return variants.map(variant => `${head}${variant}`)
    }
    default: {
      const head = `N${type}-${1000 + choose(9000)}`
      return variants.map(() => `${head}-${letter()}`)
    }
  }
}
