import { useId } from 'react'
import { locationLabel, undoLabel } from '../../shared-schemas/read-scan.ts'
import { LabelSheet } from './label-sheet.tsx'
import { playScanSound } from './play-scan-sound.ts'
import { type ScannerSettings, scannerSettings, useScannerSettings } from './scanner-settings.ts'

interface ScannerPanelProps {
  readonly locations: readonly { readonly location: string; readonly name: string }[]
}

/** How this machine's scanner is told from typing, and whether it is heard. */
export function ScannerPanel({ locations }: ScannerPanelProps) {
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
        <p className="scanner-panel__sound">
          <LabelSheet
            name="Labels of places, and the one that takes a scan back…"
            labels={[
              { title: 'UNDO', detail: 'Takes the last scan back', code: undoLabel },
              ...locations.map(({ location, name }) => ({
                title: location,
                detail: name,
                code: locationLabel(location),
              })),
            ]}
          />
        </p>
      </div>
    </details>
  )
}
