import type { FoundModels } from '../../shared-schemas/model-lookup.ts'

type SetAside = FoundModels['setAside']

/** One typed character as the plate takes it: part of the number, a separator, or part of a word that is no number. */
export interface PlateStroke {
  readonly as: 'number' | 'separator' | 'word'
  readonly text: string
  /** What it adds to the key; empty for a separator. `?` stands for one character that cannot be read. */
  readonly key: string
}

/** Takes what was typed apart, one stroke a character, in the order typed. */
export function readStrokes(typed: string, setAside: SetAside): readonly PlateStroke[] {
  const spans = spansSetAside(typed, setAside)
  return Array.from({ length: typed.length }, (_, at) => {
    const text = typed.charAt(at)
    if (spans.some(({ from, to }) => at >= from && at < to)) return { as: 'word', text, key: '' }
    const key = keyOfCharacter(text)
    return { as: key === '' ? 'separator' : 'number', text, key }
  })
}

function keyOfCharacter(text: string): string {
  return text
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}?]/gu, '')
}

/** Words come back as they stood and in their order, so each is looked for after the one before. */
function spansSetAside(typed: string, setAside: SetAside) {
  let searched = 0
  return setAside.flatMap(({ word }) => {
    const from = typed.indexOf(word, searched)
    if (from < 0) return []
    searched = from + word.length
    return [{ from, to: searched }]
  })
}
