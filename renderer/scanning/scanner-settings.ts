import { useSyncExternalStore } from 'react'
import { z } from 'zod'

/** What differs from scanner to scanner. Kept on this machine, since the scanner hangs on it. */
export const scannerSettings = z.object({
  /** Keys closer than this come from a scanner. */
  betweenKeysMilliseconds: z.int().min(5).max(100),
  terminator: z.enum(['Enter', 'Tab', 'either']),
  /** Shorter bursts are typing. */
  leastLength: z.int().min(2).max(20),
  hasSound: z.boolean(),
})
export type ScannerSettings = z.infer<typeof scannerSettings>

export const usualSettings: ScannerSettings = {
  betweenKeysMilliseconds: 35,
  terminator: 'Enter',
  leastLength: 4,
  hasSound: true,
}

/** The settings, and what changes them. */
export function useScannerSettings() {
  const settings = useSyncExternalStore(listen, readScannerSettings)
  return { settings, change: keepScannerSettings }
}

export function readScannerSettings(): ScannerSettings {
  current ??= readKept()
  return current
}

function keepScannerSettings(settings: ScannerSettings): void {
  current = settings
  try {
    localStorage.setItem(keptUnder, JSON.stringify(settings))
  } catch {
    // A browser that keeps nothing still scans, with these settings until it is closed.
  }
  for (const listener of listeners) listener()
}

const keptUnder = 'tallyplate.scanner'
const listeners = new Set<() => void>()
let current: ScannerSettings | undefined

function listen(listener: () => void) {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

function readKept(): ScannerSettings {
  try {
    return scannerSettings.parse(JSON.parse(localStorage.getItem(keptUnder) ?? ''))
  } catch {
    // Nothing kept yet, or by another version: the usual settings suit most scanners.
    return usualSettings
  }
}
