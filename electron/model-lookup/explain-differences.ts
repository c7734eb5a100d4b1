import type { CharacterDifference } from '../../shared-schemas/model-lookup.ts'
import { alignmentCosts, headCost, tailCost } from './align-keys.ts'
import { type Alphabet, encodeKey, unreadableCode } from './fold-characters.ts'

/**
 * Where a text and a key differ, character by character, places counted from 1 over the key: what stood in the text
 * and what the catalogue has. A character that was not given has an empty `typed`, one too many an empty `catalogue`
 * at the place before which it stands; two that changed places are two differences.
 */
export function explainDifferences(compared: Compared): CharacterDifference[] {
  const { text, key, marks } = compared
  const { costs, steps } = alignFully(compared)
  const last = costs[text.length] ?? []
  let at = key.length
  const wholeCost = (end: number) => (last[end] ?? Infinity) + tailCost(key.length - end, end, marks)
  for (let end = 1; end < key.length; end++) if (wholeCost(end) < wholeCost(at)) at = end
  const differences = notGiven(key, at, key.length)
  let place = text.length
  while (place > 0) {
    const step = steps[place]?.[at] ?? 'added'
    if (step === 'paired' && text[place - 1] !== key[at - 1])
      differences.push({ at, typed: text.charAt(place - 1), catalogue: key.charAt(at - 1) })
    if (step === 'missing') differences.push({ at, typed: '', catalogue: key.charAt(at - 1) })
    if (step === 'added') differences.push({ at: at + 1, typed: text.charAt(place - 1), catalogue: '' })
    if (step === 'swapped') {
      differences.push({ at, typed: text.charAt(place - 1), catalogue: key.charAt(at - 1) })
      differences.push({ at: at - 1, typed: text.charAt(place - 2), catalogue: key.charAt(at - 2) })
    }
    at -= step === 'swapped' ? 2 : step === 'added' ? 0 : 1
    place -= step === 'swapped' ? 2 : step === 'missing' ? 0 : 1
  }
  // The way was walked backwards: what stands at one place comes in the order in which it was typed.
  const inOrder = [...notGiven(key, 0, at), ...differences.reverse()]
  return pairUp(inOrder.sort((one, other) => one.at - other.at))
}

/** A character too many where another is missing is shown as the one in place of the other. */
function pairUp(differences: readonly CharacterDifference[]): CharacterDifference[] {
  const paired: CharacterDifference[] = []
  for (const one of differences) {
    const open = paired.findIndex(
      ({ at, typed, catalogue }) =>
        at === one.at && ((typed === '' && one.catalogue === '') || (catalogue === '' && one.typed === '')),
    )
    const before = paired[open]
    if (before === undefined) paired.push(one)
    else
      paired[open] = {
        at: one.at,
        typed: before.typed + one.typed,
        catalogue: before.catalogue + one.catalogue,
      }
  }
  return paired
}

export interface Compared {
  readonly alphabet: Alphabet
  readonly text: string
  readonly key: string
  /** Where the key's printed segments begin, as `KeyTable.segments` has it. */
  readonly marks: number
}

type Step = 'paired' | 'added' | 'missing' | 'swapped'

/** The whole table of `alignCost`, kept, so that the way through it can be walked back. */
function alignFully({ alphabet, text, key, marks }: Compared) {
  const typedCodes = encodeKey(alphabet, text)
  const printedCodes = encodeKey(alphabet, key)
  const pairCost = (place: number, at: number) => {
    const typed = typedCodes[place - 1] ?? 0
    if (typed === unreadableCode) return alignmentCosts.unreadable
    const printed = printedCodes[at - 1] ?? 0
    return typed === printed ? 0 : (alphabet.weights[(typed << 8) | printed] ?? 0)
  }
  const costs: number[][] = [Array.from({ length: key.length + 1 }, (_, at) => headCost(at, marks))]
  const steps: Step[][] = [[]]
  for (let place = 1; place <= text.length; place++) {
    const extra =
      text.charAt(place - 1) === text.charAt(place - 2) ? alignmentCosts.doubled : alignmentCosts.added
    const before = costs[place - 1] ?? []
    const row = [(before[0] ?? 0) + extra]
    const stepRow: Step[] = ['added']
    for (let at = 1; at <= key.length; at++) {
      let cost = (before[at - 1] ?? 0) + pairCost(place, at)
      let step: Step = 'paired'
      const take = (other: number, by: Step) => {
        if (other < cost) [cost, step] = [other, by]
      }
      take((before[at] ?? 0) + extra, 'added')
      take((row[at - 1] ?? 0) + alignmentCosts.missing, 'missing')
      if (place > 1 && at > 1 && isSwapped(text, key, place, at))
        take((costs[place - 2]?.[at - 2] ?? 0) + alignmentCosts.swapped, 'swapped')
      row.push(cost)
      stepRow.push(step)
    }
    costs.push(row)
    steps.push(stepRow)
  }
  return { costs, steps }
}

function isSwapped(text: string, key: string, place: number, at: number): boolean {
  return (
    text[place - 1] === key[at - 2] && text[place - 2] === key[at - 1] && text[place - 1] !== text[place - 2]
  )
}

function notGiven(key: string, from: number, to: number): CharacterDifference[] {
  return [...key.slice(from, to)].map((catalogue, offset) => ({
    at: from + offset + 1,
    typed: '',
    catalogue,
  }))
}
