import { useEffect, useRef } from 'react'
import { groupSeparator } from '../../shared-schemas/gs1-elements.ts'
import { readScannerSettings } from './scanner-settings.ts'
import { type Burst, type Struck, tellScan } from './tell-scan.ts'
import { type FieldBefore, giveBack, noteField, typeInto } from './typed-field.ts'

/** Gives every code that is scanned while this screen shows, wherever the focus is. The code goes into no field. */
export function useScans(onScan: (code: string) => void): void {
  const current = useRef(onScan)
  useEffect(() => {
    current.current = onScan
  })
  useEffect(() => listenForScans(code => current.current(code)), [])
}

/** Does what a single key stands for once it is sure that no scan goes on with it. */
export function unlessScanned(act: () => void): void {
  const before = heldKeys
  setTimeout(() => {
    if (heldKeys === before) act()
  }, readScannerSettings().betweenKeysMilliseconds + 15)
}

let heldKeys = 0

/** Ahead of every other listener, so that a held key reaches none of them. */
function listenForScans(onScan: (code: string) => void): () => void {
  let burst: Burst | null = null
  let before: FieldBefore | null = null
  let struckIn: Element | null = null
  let timer: ReturnType<typeof setTimeout> | undefined
  const release = () => {
    if (burst !== null && burst.held !== '') typeInto(struckIn, burst.held)
    burst = null
  }
  /**
   * What was held and goes no further was typed: it is put in the field before anybody misses it. A page that was busy
   * meanwhile wakes to its timers first and to the keys that waited second, so that it listens once more.
   */
  const releaseLater = (milliseconds: number) =>
    setTimeout(() => {
      timer = setTimeout(release, milliseconds)
    }, milliseconds * 4)
  const hear = (event: KeyboardEvent) => {
    const key = readKey(event)
    if (key === null) return
    const settings = readScannerSettings()
    // A scanner does not go from field to field within a code.
    if (document.activeElement !== struckIn) release()
    const told = tellScan(burst, key, settings)
    if (told.released !== '') typeInto(struckIn, told.released)
    if (key.is === 'character' && !told.isHeld) {
      before = noteField()
      struckIn = document.activeElement
    }
    burst = told.burst
    clearTimeout(timer)
    if (burst !== null && burst.held !== '') timer = releaseLater(settings.betweenKeysMilliseconds)
    if (!told.isHeld) return
    heldKeys++
    event.preventDefault()
    event.stopImmediatePropagation()
    if (told.scanned === null) return
    giveBack(before)
    onScan(told.scanned)
  }
  document.addEventListener('keydown', hear, true)
  return () => {
    clearTimeout(timer)
    document.removeEventListener('keydown', hear, true)
  }
}

function readKey(event: KeyboardEvent): Struck | null {
  const at = event.timeStamp
  const { key } = event
  // Held down by a person: a scanner never repeats.
  if (event.isComposing || event.repeat) return { is: 'other', at }
  // The separator inside a GS1 code, as keyboards send it.
  if (event.ctrlKey && !event.altKey && key === ']') return { is: 'character', character: groupSeparator, at }
  if (['Shift', 'Control', 'Alt', 'AltGraph', 'Meta', 'CapsLock'].includes(key)) return { is: 'modifier', at }
  if (key === 'Enter' || key === 'Tab') return { is: key, at }
  const isTyped = [...key].length === 1 && !event.ctrlKey && !event.metaKey
  return isTyped ? { is: 'character', character: key, at } : { is: 'other', at }
}
