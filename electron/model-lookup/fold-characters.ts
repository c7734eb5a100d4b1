/** What a whole wrong character costs; every other weight is a share of it. */
export const wholeEdit = 16

/** Characters that a worn plate, a camera or a hurried hand takes for one another. */
const lookalikeClasses = ['0OQD', '1IL', '2Z', '5S', '6G', '8B']

/** What taking one for the other costs. Two of a class that are not named here cost `otherLookalike`. */
const lookalikeWeights: Readonly<Record<string, number>> = {
  '0O': 3, '0Q': 4, OQ: 4, '0D': 5, OD: 5, '1I': 3, '1L': 4, IL: 4, '2Z': 4, '5S': 4, '6G': 4, '8B': 4,
} // biome-ignore format: a table of pairs reads best in one block
const otherLookalike = 6
/** The same shape in another alphabet, or an accent that a keyboard does not have. */
const sameShape = 2

/** A letter for a digit that does not look like it is rarer than a digit for a digit. */
export const otherKind = 20

/** Capitals of other alphabets that are printed like a Latin one, each above the letter that it looks like. */
const otherAlphabets = [
  ['АВЕЅІЈКМНОРСТУХ', 'ABESIJKMHOPCTYX'],
  ['ΑΒΕΖΗΙΚΜΝΟΡΤΥΧ', 'ABEZHIKMNOPTYX'],
] as const

const plain = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'

/**
 * The characters of a catalogue's keys as small numbers. Latin letters, accents and lookalikes are always there; any
 * other letter gets a code when a key has it.
 */
export interface Alphabet {
  /** The characters beyond the usual ones, in the order of their codes. */
  readonly others: readonly string[]
  /** Code of each UTF-16 unit; `strangeCode` where no key has it. */
  readonly codeOf: Uint8Array
  /** The UTF-16 unit of each code; 0 where a code stands for no one character. */
  readonly unitOf: Uint16Array
  /** Class of each code, 1 to 31: characters that look alike share one, and so do all letters of other scripts. */
  readonly classOf: Uint8Array
  /** What taking code `a` for code `b` costs, at `a << 8 | b`. Below `wholeEdit` they look alike. */
  readonly weights: Uint8Array
}

/** `?` in a text: one character that cannot be read, alike to all. No key has it. */
export const unreadableCode = 0
/** A character that no key has, unlike all. Past some ninety foreign letters one catalogue's rarest share it. */
export const strangeCode = 255

/** The alphabet of a catalogue whose keys hold these characters besides the usual ones. */
export function createAlphabet(keyCharacters: Iterable<string>): Alphabet {
  return extendAlphabet(usualAlphabet, keyCharacters)
}

/** The alphabet with these characters too. Every code that it had means what it meant. */
export function extendAlphabet(alphabet: Alphabet, keyCharacters: Iterable<string>): Alphabet {
  const known = new Set(alphabet.others)
  const added = [...new Set(keyCharacters)].filter(
    character => !isUsual.has(character) && !known.has(character),
  )
  return added.length === 0 ? alphabet : layOut([...alphabet.others, ...added.sort()])
}

/** The alphabet in which these characters beyond the usual ones have their codes in this order. */
export function restoreAlphabet(others: readonly string[]): Alphabet {
  return others.length === 0 ? usualAlphabet : layOut(others)
}

/** Whether every character has a code of its own. */
export function holdsEveryCharacter({ others }: Alphabet): boolean {
  return usualCharacters.length + others.length < strangeCode
}

/** The ten digits have the first codes after the unreadable one. */
export function isDigitCode(code: number): boolean {
  return code >= 1 && code <= 10
}

function layOut(others: readonly string[]): Alphabet {
  const characters = [...usualCharacters, ...others].slice(0, strangeCode - 1)
  const shapes = characters.map(shapeOf)
  const codeOf = new Uint8Array(65536).fill(strangeCode)
  const classOf = new Uint8Array(256).fill(foreignClass)
  const unitOf = new Uint16Array(256)
  const weights = new Uint8Array(65536).fill(otherKind)
  codeOf['?'.charCodeAt(0)] = unreadableCode
  weights.fill(0, 0, 256)
  characters.forEach((character, at) => {
    codeOf[character.charCodeAt(0)] = at + 1
    unitOf[at + 1] = character.charCodeAt(0)
    classOf[at + 1] = classOfShape(shapes[at] ?? character)
    for (let other = 0; other < characters.length; other++)
      weights[((at + 1) << 8) | (other + 1)] =
        other === at ? 0 : weighShapes(shapes[at] ?? character, shapes[other] ?? character)
  })
  return { others, codeOf, unitOf, classOf, weights }
}

/** A key or a text's key as codes. */
export function encodeKey({ codeOf }: Alphabet, key: string): Uint8Array {
  const codes = new Uint8Array(key.length)
  for (let at = 0; at < key.length; at++) codes[at] = codeOf[key.charCodeAt(at)] ?? strangeCode
  return codes
}

/** Capitals of Latin-1 and Latin Extended-A that are a plain letter with a mark. */
function accentedLetters(): string[] {
  const block = Array.from({ length: 0x180 - 0xc0 }, (_, at) => String.fromCharCode(0xc0 + at))
  return block.filter(letter => letter === letter.toUpperCase() && shapeOf(letter) !== letter)
}

/** The plain character of the same shape; the character itself where there is none. */
function shapeOf(character: string): string {
  for (const [foreign, latin] of otherAlphabets) {
    const at = foreign.indexOf(character)
    if (at >= 0) return latin[at] ?? character
  }
  const base = character.normalize('NFD')[0] ?? character
  return plain.includes(base) ? base : character
}

const classNames = [
  ...lookalikeClasses,
  ...[...plain].filter(character => !lookalikeClasses.some(alike => alike.includes(character))),
]
const foreignClass = classNames.length + 1

function classOfShape(shape: string): number {
  const at = classNames.findIndex(alike => alike.includes(shape))
  return at < 0 ? foreignClass : at + 1
}

/** Of two different characters with these shapes. */
function weighShapes(one: string, other: string): number {
  if (one === other) return sameShape
  const weight = weightOfPair.get(one + other)
  if (weight !== undefined) return weight
  return isDigit(one) === isDigit(other) ? wholeEdit : otherKind
}

const weightOfPair = new Map(
  lookalikeClasses.flatMap(alike =>
    [...alike].flatMap(one =>
      [...alike].map(
        other =>
          [
            one + other,
            lookalikeWeights[one + other] ?? lookalikeWeights[other + one] ?? otherLookalike,
          ] as const,
      ),
    ),
  ),
)

function isDigit(character: string): boolean {
  return character >= '0' && character <= '9'
}

const usualCharacters = [
  ...plain,
  ...accentedLetters(),
  ...otherAlphabets.flatMap(([foreign]) => [...foreign]),
]
const isUsual: ReadonlySet<string> = new Set(usualCharacters)
/** Nearly every catalogue's: laid out once. */
const usualAlphabet = layOut([])
