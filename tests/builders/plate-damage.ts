import fc from 'fast-check'

/** One way in which a number comes off a plate other than it was printed. */
export type Damage =
  | 'as printed'
  | 'lookalike'
  | 'wrong character'
  | 'missing character'
  | 'added character'
  | 'doubled character'
  | 'swapped neighbours'
  | 'unreadable character'
  | 'missing suffix'
  | 'missing head'
  | 'middle only'

export const damages: readonly Damage[] = [
  'as printed',
  'lookalike',
  'wrong character',
  'missing character',
  'added character',
  'doubled character',
  'swapped neighbours',
  'unreadable character',
  'missing suffix',
  'missing head',
  'middle only',
]

const characters = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'
const lookalikes = ['0OQD', '1IL', '2Z', '5S', '6G', '8B']

/** The key with one damage at a place that `choose` picks: `choose(n)` is a whole number below n. */
export function damageKey(key: string, damage: Damage, choose: (below: number) => number): string {
  const at = choose(key.length)
  const [before, here, after] = [key.slice(0, at), key.charAt(at), key.slice(at + 1)]
  switch (damage) {
    case 'as printed':
      return key
    case 'lookalike': {
      const alike = lookalikes.find(group => group.includes(here))?.replace(here, '') ?? here
      return before + alike.charAt(choose(alike.length)) + after
    }
    case 'wrong character':
      return before + otherThan(here, choose) + after
    case 'missing character':
      return before + after
    case 'added character':
      return before + characters.charAt(choose(characters.length)) + here + after
    case 'doubled character':
      return before + here + here + after
    case 'swapped neighbours':
      return before + after.charAt(0) + here + after.slice(1)
    case 'unreadable character':
      return `${before}?${after}`
    case 'missing suffix':
      return key.slice(0, Math.max(fewestLeft, key.length - 1 - choose(3)))
    case 'missing head':
      return key.slice(Math.min(key.length - fewestLeft, 1 + choose(3)))
    case 'middle only':
      return key.slice(1 + choose(2), Math.max(fewestLeft + 2, key.length - 1 - choose(2)))
  }
}

const fewestLeft = 4

function otherThan(here: string, choose: (below: number) => number): string {
  const others = characters.replace(here, '')
  return others.charAt(choose(others.length))
}

const number = fc
  .tuple(
    fc.constantFrom('ODW', 'WX', 'LV', '533', 'PR8', 'TVD9', 'Q'),
    fc.string({ unit: fc.constantFrom(...'012458BDISZ'), minLength: 4, maxLength: 6 }),
    fc.constantFrom('', '01', '02', 'B', 'MK4', 'LONGSUFFIX1234567890X'),
  )
  .map(([head, middle, suffix]) => head + middle + suffix)

/** Model numbers as a dense catalogue has them: each with others that differ in a character or two, so that slips meet. */
export const denseNumbers = fc
  .array(fc.tuple(number, fc.array(fc.tuple(fc.nat(), fc.constantFrom(...'0127AXK')), { maxLength: 4 })), {
    minLength: 1,
    maxLength: 10,
  })
  .map(families => [
    ...new Set(
      families.flatMap(([first, changes]) => [first, ...changes.map(change => changed(first, change))]),
    ),
  ])

function changed(first: string, [at, character]: readonly [number, string]): string {
  const place = at % first.length
  return first.slice(0, place) + character + first.slice(place + 1)
}
