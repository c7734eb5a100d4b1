import { useCallback, useState } from 'react'
import { type Slip, wordSlip } from './slip-text.ts'

export type CopyOutcome = 'none' | 'copied' | 'nothing-to-copy' | 'refused'

/** Copies the slip as it stands on the screen, and says what came of it until the slip says something else. */
export function useCopySlip(slip: Slip | null) {
  const text = slip === null ? null : wordSlip(slip)
  const [copied, setCopied] = useState<{ readonly text: string | null; readonly outcome: CopyOutcome }>()
  const copy = useCallback(async () => {
    setCopied({ text, outcome: await copyText(text) })
  }, [text])
  return { outcome: copied?.text === text ? copied.outcome : ('none' as const), copy }
}

async function copyText(text: string | null): Promise<CopyOutcome> {
  if (text === null) return 'nothing-to-copy'
  try {
    await navigator.clipboard.writeText(text)
    return 'copied'
  } catch {
    return 'refused'
  }
}
