/** How many pieces a line asks for, as far as what is written says. */
export type ReadQuantity =
  | { readonly kind: 'stated'; readonly pieces: number }
  | { readonly kind: 'assumed'; readonly pieces: 1 }
  | { readonly kind: 'unreadable'; readonly typed: string; readonly why: string }

/** Reads a quantity without ever guessing: what is not a whole number of pieces is said to be none. Missing means one. */
export function readQuantity(written: string | number | undefined): ReadQuantity {
  const typed = written === undefined ? '' : String(written).trim()
  if (typed === '') return { kind: 'assumed', pieces: 1 }
  const unreadable = (why: string): ReadQuantity => ({ kind: 'unreadable', typed, why })
  if (/^[-−]/.test(typed)) return unreadable('is below nought')
  if (/^\d+[.,]\d+$/.test(typed)) return readFraction(typed)
  if (!/^\d+$/.test(typed)) return unreadable('is not a whole number')
  const pieces = Number(typed)
  if (pieces === 0) return unreadable('orders nothing')
  return pieces > most ? unreadable(`is more than ${most.toLocaleString('en')}`) : { kind: 'stated', pieces }
}

const most = 1_000_000

/** `2.0` is two. `1,000` may be one or a thousand, depending on who wrote it, so it is neither. */
function readFraction(typed: string): ReadQuantity {
  const [whole = '', rest = ''] = typed.split(/[.,]/)
  if (/^0{1,2}$/.test(rest) && Number(whole) > 0) return readQuantity(whole)
  const why = rest.length === 3 ? 'may be read in two ways' : 'is not a whole number'
  return { kind: 'unreadable', typed, why }
}
