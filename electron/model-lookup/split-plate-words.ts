import { isLabelWord, isSerialLabelWord } from './label-words.ts'
import { plateKey } from './plate-key.ts'

export interface PlateWord {
  /** As it stood in the text. */
  readonly word: string
  /** Letters, digits and `?` only; never empty. */
  readonly key: string
  /** A new line or a comma stands before it, so that it need not go with the word before. */
  readonly startsApart: boolean
  /** It stands as labels do: with a stop, colon or stroke in it or behind it. */
  readonly punctuated: boolean
}

/** The words of a plate text as they stand, a label parted from the number that was glued to it: `MOD.WX-20` is two. */
export function splitPlateWords(text: string): PlateWord[] {
  const words: PlateWord[] = []
  let startsApart = false
  for (const [piece] of text.matchAll(pieces)) {
    if (/^[\n\r,;|]/.test(piece)) {
      startsApart = true
      continue
    }
    for (const word of partLabel(piece)) {
      const key = plateKey(word)
      if (key === '') continue
      words.push({ word, key, startsApart, punctuated: /[.:=/#°º]/u.test(word) })
      startsApart = false
    }
  }
  return words
}

/** A comma before one or two last digits is a decimal comma: `38,5kg`. */
const pieces = /[\n\r;|]+|,(?!\d{1,2}(?!\d))|(?:[^\s,;|]|,(?=\d{1,2}(?!\d)))+/gu

function partLabel(piece: string): string[] {
  const glued = /^([\p{L}./°º-]+?[.:=#°º]+)(.*[\p{L}\p{N}?].*)$/u.exec(piece)
  if (glued === null) return [piece]
  const [, label = '', rest = ''] = glued
  const key = plateKey(label)
  return isLabelWord(key) || isSerialLabelWord(key) ? [label, ...partLabel(rest)] : [piece]
}
