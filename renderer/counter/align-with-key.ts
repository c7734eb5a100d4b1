import type { ModelCandidate } from '../../shared-schemas/model-lookup.ts'

/** One column of the comparison: a typed character, a catalogue character, or both. Both count from 0. */
export interface AlignedColumn {
  readonly typed: number | null
  readonly catalogue: number | null
}

type Compared = Pick<ModelCandidate, 'key' | 'differences'>

/**
 * Lays a typed key beside a model's, by the differences that the look-up named; where those are of another text (the
 * answer to the last keystroke is still on its way), as a piece of the model's key. Undefined: they do not lie together.
 */
export function alignWithKey(typed: string, model: Compared): readonly AlignedColumn[] | undefined {
  return alignByDifferences(typed, model) ?? alignAsPiece(typed, model.key)
}

function alignByDifferences(typed: string, { key, differences }: Compared): AlignedColumn[] | undefined {
  const columns: AlignedColumn[] = []
  let read = 0
  for (let at = 1; at <= key.length + 1; at++) {
    const here = differences.filter(difference => difference.at === at)
    for (const surplus of here.filter(({ catalogue }) => catalogue === ''))
      for (let count = 0; count < surplus.typed.length; count++)
        columns.push({ typed: read++, catalogue: null })
    if (at > key.length) break
    const changed = here.find(({ catalogue }) => catalogue !== '')
    if (changed === undefined) {
      if (!agree(typed.charAt(read), key.charAt(at - 1))) return undefined
      columns.push({ typed: read++, catalogue: at - 1 })
      continue
    }
    const width = Math.max(changed.typed.length, changed.catalogue.length)
    for (let step = 0; step < width; step++) {
      const isTyped = step < changed.typed.length
      columns.push({
        typed: isTyped ? read++ : null,
        catalogue: step < changed.catalogue.length ? at - 1 + step : null,
      })
    }
    at += changed.catalogue.length - 1
  }
  return read === typed.length ? columns : undefined
}

function alignAsPiece(typed: string, key: string): AlignedColumn[] | undefined {
  for (let start = 0; start + typed.length <= key.length; start++) {
    const lies = [...typed].every((character, at) => agree(character, key.charAt(start + at)))
    if (!lies) continue
    return Array.from({ length: key.length }, (_, at) => ({
      typed: at >= start && at < start + typed.length ? at - start : null,
      catalogue: at,
    }))
  }
  return undefined
}

function agree(typed: string, catalogue: string): boolean {
  return typed === '?' || typed === catalogue
}
