import { useState } from 'react'

/** Copies and saves the checked order as it stands, and says what came of it until the order says something else. */
export function useCheckedCsv(csv: string | null) {
  const [said, setSaid] = useState<{ readonly csv: string | null; readonly words: string }>()
  const say = (words: string) => setSaid({ csv, words })
  const copy = async () => {
    if (csv === null) return say('Nothing is checked yet.')
    try {
      await navigator.clipboard.writeText(csv)
      say('Copied. It is on the clipboard.')
    } catch {
      say('The clipboard was refused. Save the file instead.')
    }
  }
  const save = () => {
    if (csv === null) return say('Nothing is checked yet.')
    saveAs('checked-order.csv', csv)
    say('Handed over as checked-order.csv.')
  }
  return { outcome: said?.csv === csv ? (said?.words ?? '') : '', copy, save }
}

function saveAs(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/csv;charset=utf-8' }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  // The browser reads it after this turn.
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}
