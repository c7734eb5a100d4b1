import type { Verdict } from '../../shared-schemas/fit-check.ts'
import { verdictWords } from './verdict-words.ts'

/** The verdict as a word; its rule and weight only support it. */
export function VerdictWord({ verdict }: { readonly verdict: Verdict }) {
  return <span className={`verdict verdict--${verdict}`}>{verdictWords[verdict]}</span>
}
