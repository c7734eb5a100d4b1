import { useId } from 'react'
import { playScanSound } from './play-scan-sound.ts'
import { type ScannerSettings, scannerSettings, useScannerSettings } from './scanner-settings.ts'

/** How this machine's scanner is told from typing, and whether it is heard. */
export function ScannerPanel() {
  const { settings, change } = useScannerSettings()
  const id = useId()
  const set = (changed: Partial<ScannerSettings>) => {
    const parsed = scannerSettings.safeParse({ ...settings, ...changed })
    if (parsed.success) change(parsed.data)
  }
  return (
    <details className="scanner-panel">
      <summary>Scanner</summary>
      <div className="scanner-panel__fields">
        <label htmlFor={`${id}-ends`}>A code ends with</label>
        <select
          id={`${id}-ends`}
          className="text-field"
          value={settings.terminator}
          onChange={event => {
            const terminator = scannerSettings.shape.terminator.safeParse(event.target.value)
            if (terminator.success) set({ terminator: terminator.data })
          }}
        >
          <option value="Enter">Enter</option>
          <option value="Tab">Tab</option>
          <option value="either">Enter or Tab</option>
        </select>
        <label htmlFor={`${id}-between`}>Milliseconds between keys, at most</label>
        <input
          id={`${id}-between`}
          className="text-field"
          type="number"
          min={5}
          max={100}
          value={settings.betweenKeysMilliseconds}
          onChange={event => set({ betweenKeysMilliseconds: event.target.valueAsNumber })}
        />
        <label htmlFor={`${id}-least`}>Characters, at least</label>
        <input
          id={`${id}-least`}
          className="text-field"
          type="number"
          min={2}
          max={20}
          value={settings.leastLength}
          onChange={event => set({ leastLength: event.target.valueAsNumber })}
        />
        <label className="scanner-panel__sound">
          <input
            type="checkbox"
            checked={settings.hasSound}
            onChange={event => {
              set({ hasSound: event.target.checked })
              if (event.target.checked) playScanSound('taken')
            }}
          />{' '}
          A sound on each scan
        </label>
      </div>
    </details>
  )
}
