import type { AlikeModels, Possibility } from '../../electron/fit-check/suppose-appliances.ts'
import { type ReadingTable, tabulateReadings } from '../../electron/fit-check/tabulate-readings.ts'
import { aModel, partIdOf } from './fit-dossier.ts'

/** Models of which the same is said, as plate keys with a brand, and each way in which they may be. */
export interface OpenKind {
  readonly models: readonly (readonly [key: string, brand: string])[]
  readonly ways: readonly OpenWay[]
}

export interface OpenWay {
  /** By reading, what it would show. */
  readonly shows: Readonly<Record<string, string>>
  /** The part that would be sold. */
  readonly sold: number
}

/** Kinds of one model each, whose plate reads as the key. */
export function kindsOf(ways: Readonly<Record<string, readonly OpenWay[]>>): OpenKind[] {
  return Object.entries(ways).map(([key, ofModel]) => ({ models: [[key, 'Velmara']], ways: ofModel }))
}

export function aReadingTable(kinds: readonly OpenKind[]): ReadingTable {
  return tabulateReadings(kinds.map(anAlike), ({ answer }) => String(answer.current))
}

function anAlike({ models, ways }: OpenKind): AlikeModels {
  return {
    models: models.map(([key, brand]) => aModel(key, { brand })),
    possibilities: ways.map(aPossibility),
  }
}

function aPossibility({ shows, sold }: OpenWay): Possibility {
  return {
    shows: new Map(Object.entries(shows)),
    answer: {
      outcome: 'yes',
      current: partIdOf(sold),
      chain: [],
      alsoNeeds: [],
      together: [],
      because: 'listed-part',
      statements: [],
      disagreeing: [],
    },
  }
}

/** A few kinds of one to three models and one to three ways each, drawn from a seed. */
export function drawKinds(seed: number): OpenKind[] {
  let state = Math.imul(seed, 2_654_435_761)
  const draw = (below: number) => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0
    return (state >>> 16) % below
  }
  const upTo = <Item>(most: number, make: () => Item) => Array.from({ length: 1 + draw(most) }, make)
  return Array.from({ length: 5 }, () => ({
    models: upTo(3, () => [`${draw(2)}${draw(3)}${draw(2)}`, draw(2) === 0 ? 'Velmara' : 'Ostrel'] as const),
    ways: upTo(3, () => ({
      shows: { volts: `${draw(2)}`, made: `${draw(3)}` },
      sold: 1 + draw(2),
    })),
  }))
}
