import { useCallback, useRef, useState } from 'react'
import type { FoundCode } from '../../shared-schemas/stock-ledger.ts'
import { ask } from '../bridge/client.ts'
import { playScanSound, type ScanSound } from './play-scan-sound.ts'
import { useScans } from './use-scans.ts'

/** What one scan came to, in one line. */
export interface ScanNote {
  readonly sound: ScanSound
  readonly text: string
  /** A code that nobody here knows yet, which may be attached to a part. */
  readonly unknown: { readonly code: string; readonly packOf: string | null } | null
}

export type FoundPart = Extract<FoundCode, { readonly kind: 'part' }>
export type FoundLocation = Extract<FoundCode, { readonly kind: 'location' }>

/** What a screen does with a scan. Each answers with the line that says what was done. */
export interface ScanUses {
  /** Asked first: the line for a code that means something on this screen alone, as the number of an order does. */
  readonly onCode?: (code: string) => Promise<string> | undefined
  readonly onPart: (part: FoundPart) => Promise<string> | string
  readonly onLocation: (location: FoundLocation) => Promise<string> | string
  readonly onUndo: () => Promise<string> | string
  /** For a code that stands for no part and no location: the line of what it is on this screen, if it is anything. */
  readonly onUnknown?: (code: string) => Promise<string | undefined>
}

/** Takes scans one after the other, in the order in which they came, however fast. */
export function useScanned(uses: ScanUses) {
  const [note, setNote] = useState<ScanNote | null>(null)
  const last = useRef(Promise.resolve())
  const tell = useCallback((told: ScanNote) => {
    playScanSound(told.sound)
    setNote(told)
  }, [])
  const take = (code: string) => {
    last.current = last.current.then(async () => tell(await takeCode(code, uses)))
  }
  useScans(take)
  const undo = () => {
    last.current = last.current.then(async () => tell(await noteUndo(uses)))
  }
  return { note, take, tell, undo, forget: () => setNote(null) }
}

async function takeCode(code: string, uses: ScanUses): Promise<ScanNote> {
  try {
    const own = await uses.onCode?.(code)
    if (own !== undefined) return { sound: 'taken', text: own, unknown: null }
    const { found } = await ask('stock-ledger.find-code', { code })
    return await noteFound(code, found, uses)
  } catch (thrown) {
    return noteProblem(thrown)
  }
}

async function noteFound(code: string, found: FoundCode, uses: ScanUses): Promise<ScanNote> {
  switch (found.kind) {
    case 'part':
      return { sound: 'taken', text: await uses.onPart(found), unknown: null }
    case 'location':
      return { sound: 'taken', text: await uses.onLocation(found), unknown: null }
    case 'undo':
      return noteUndo(uses)
    case 'misread':
      return { sound: 'refused', text: wordMisread(code, found.why), unknown: null }
    case 'unknown': {
      const text = await uses.onUnknown?.(code)
      if (text !== undefined) return { sound: 'taken', text, unknown: null }
      return {
        sound: 'refused',
        text: `Nothing here has the code ${showCode(code)}.`,
        unknown: { code, packOf: found.packOf },
      }
    }
  }
}

async function noteUndo(uses: ScanUses): Promise<ScanNote> {
  try {
    return { sound: 'undone', text: await uses.onUndo(), unknown: null }
  } catch (thrown) {
    return noteProblem(thrown)
  }
}

function noteProblem(thrown: unknown): ScanNote {
  if (!(thrown instanceof Error)) throw thrown
  return { sound: 'refused', text: thrown.message, unknown: null }
}

function wordMisread(code: string, why: 'check-digit' | 'elements'): string {
  return why === 'check-digit'
    ? `${showCode(code)} was not read right: its check digit is wrong. Scan it again.`
    : `${showCode(code)} cannot be made out. Scan it again, or another code on the part.`
}

/** The separator cannot be seen; a space stands for it. */
function showCode(code: string): string {
  return code.replaceAll('\u001d', ' ')
}
