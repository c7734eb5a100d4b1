import type { ScannerSettings } from './scanner-settings.ts'

/** Keys that came as fast as only a scanner sends them. The first of them is in the field already, the others are held. */
export interface Burst {
  readonly text: string
  readonly held: string
  readonly lastAt: number
}

/** A key as it bears on scanning: a character, a key that may end a code, one that only goes with others, or any other. */
export type Struck =
  | { readonly is: 'character'; readonly character: string; readonly at: number }
  | { readonly is: 'Enter' | 'Tab'; readonly at: number }
  | { readonly is: 'modifier' | 'other'; readonly at: number }

export interface Told {
  readonly burst: Burst | null
  /** Whether the field must not see this key. */
  readonly isHeld: boolean
  /** Characters that were held and are typing after all: they go into the field before this key. */
  readonly released: string
  /** A code that is whole. */
  readonly scanned: string | null
}

/**
 * Tells a scanner from a person by time: a person's keys are seldom closer than a twentieth of a second, a scanner's a few
 * milliseconds (common practice), and a scanner ends its code with a key of its own.
 */
export function tellScan(burst: Burst | null, key: Struck, settings: ScannerSettings): Told {
  const isFast = burst !== null && key.at - burst.lastAt <= settings.betweenKeysMilliseconds
  if (key.is === 'modifier') return { burst, isHeld: false, released: '', scanned: null }
  if (key.is === 'character') return isFast ? hold(burst, key) : begin(burst, key)
  const isWhole = isFast && endsCode(key, settings) && [...burst.text].length >= settings.leastLength
  return isWhole
    ? { burst: null, isHeld: true, released: '', scanned: burst.text }
    : { burst: null, isHeld: false, released: burst?.held ?? '', scanned: null }
}

type Character = Extract<Struck, { readonly is: 'character' }>

function hold(burst: Burst, { character, at }: Character): Told {
  const longer = { text: burst.text + character, held: burst.held + character, lastAt: at }
  return { burst: longer, isHeld: true, released: '', scanned: null }
}

function begin(before: Burst | null, { character, at }: Character): Told {
  const burst = { text: character, held: '', lastAt: at }
  return { burst, isHeld: false, released: before?.held ?? '', scanned: null }
}

function endsCode({ is }: Struck, { terminator }: ScannerSettings): boolean {
  return terminator === 'either' ? is === 'Enter' || is === 'Tab' : is === terminator
}
