import { normaliseNumber } from '../../electron/catalogue/normalise-number.ts'
import type { ModelRow } from '../../electron/model-lookup/lay-out-models.ts'

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

/**
 * A catalogue of invented models, numbered as densely as makers number: families whose running numbers follow on one
 * another, each number in one or two variants. Few brands have most of the models, and few families most of a brand's:
 * both shares fall with the rank as a power of it, and no family has more than 6,000 models. At a million the numbers are
 * so dense that of the look-up bench's texts about .86 could be told apart from all others at best.
 */
export function generateModels(count: number, seed = 20261123): ModelRow[] {
  const choose = seededChoice(seed)
  const numbers = new Map<string, Numbered>()
  while (numbers.size < count) {
    const brand = chooseBrand(choose)
    for (const modelNumber of numberFamily(brand, familySize(choose), choose)) {
      const key = normaliseNumber(modelNumber)
      if (numbers.size < count && !numbers.has(key)) numbers.set(key, { brand, modelNumber })
    }
  }
  return [...numbers.keys()].sort().map((key, at) => {
    const { brand, modelNumber } = numbers.get(key) as Numbered
    return {
      modelId: at + 1,
      brand: brands[brand] ?? '',
      modelNumber,
      key,
      applianceType: applianceTypes[brand % applianceTypes.length] ?? '',
    }
  })
}

interface Numbered {
  readonly brand: number
  readonly modelNumber: string
}

/** Invented, the largest first. */
export const brands = `Korrel Vastrum Pellow Oskan Drimmel Tessary Hulvane Nordbeck
  Quillor Ferrowick Ostrivane Kelvarth Lunnark Trevassel Wexholt Jarrowin
  Puldane Sorvikka Halmerend Cordessa Dovrenne Elmarisk Fjelldane Hestermo
  Ilvarne Jostrand Krellin Morvath Nessolt Orbrenn Prandeck Rundhavn
  Tolvane Ulmegard Wolmere Yarrick Zandrel Aldervik Bexholm Corvelle`.split(/\s+/)

const applianceTypes = ['washer', 'dishwasher', 'dryer', 'oven', 'fridge']

const largestFamily = 6000
const fineness = 1_000_000

const brandShares = brands.map((_, rank) => (rank + 1) ** -0.8)
const allShares = brandShares.reduce((sum, share) => sum + share, 0)

function chooseBrand(choose: (below: number) => number): number {
  let left = (choose(fineness) / fineness) * allShares
  const found = brandShares.findIndex(share => {
    left -= share
    return left < 0
  })
  return Math.max(0, found)
}

function familySize(choose: (below: number) => number): number {
  return Math.min(largestFamily, Math.floor(4 * ((1 + choose(fineness)) / fineness) ** -0.8))
}

/** Makers number on by one, or leave room between two types. */
const stepsApart = [1, 2, 5, 10]
const mostVariants = 2

/** A family's numbers in the way of its brand: there are eight ways, and each brand has letters of its own. */
function numberFamily(brand: number, size: number, choose: (below: number) => number): string[] {
  const letters = 'ABCDEFGHKLMNPRSTVWX'
  const letter = () => letters.charAt(choose(letters.length))
  const maker = letters.charAt((brand * 7) % letters.length)
  const type = 10 + choose(90)
  const heads = [
    () => `${maker}${letter()}${letter()}`,
    () => `${1000 + choose(9000)}.`,
    () => `${maker}${letter()} ${type}`,
    () => `${53 + (brand % 40)}${100 + choose(900)}`,
    () => `${maker}R.${type}.`,
    () => `${maker}${letter()}${letter()}`,
    () => `${maker}V${letter()}`,
    () => `${maker}${type}-`,
  ]
  const writings: readonly ((running: string, variant: number) => string)[] = [
    (running, variant) => `${running}/0${variant}`,
    (running, variant) => `${running}/${variant}`,
    (running, variant) => `${running.slice(1)}-${running.slice(0, 1)} ${variantLetter(variant)}`,
    (running, variant) => `${running}-0${variant}`,
    (running, variant) => `${running}-${variantLetter(variant)}${letters.charAt(brand % letters.length)}`,
    (running, variant) => `${running.slice(0, 2)}I${running.slice(2)}-${variant}${variantLetter(brand)}`,
    (running, variant) => `${running}MK${variant}`,
    (running, variant) => `${running}-${variantLetter(variant)}`,
  ]
  const head = heads[brand % heads.length]?.() ?? ''
  const write = writings[brand % writings.length] ?? (running => running)
  const first = choose(9000)
  const apart = stepsApart[choose(stepsApart.length)] ?? 1
  const numbers: string[] = []
  for (let running = first; numbers.length < size; running += apart) {
    const digits = String(running % 10_000).padStart(4, '0')
    const variants = 1 + choose(mostVariants)
    for (let variant = 1; variant <= variants; variant++) numbers.push(head + write(digits, variant))
  }
  return numbers.slice(0, size)

  function variantLetter(variant: number): string {
    return letters.charAt((variant + type) % letters.length)
  }
}
