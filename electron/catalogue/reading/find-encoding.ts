import {
  type Encoding,
  type EncodingFound,
  type EncodingOption,
  encodings,
} from '../../../shared-schemas/supplier-layouts.ts'
import type { ByteAccount } from './byte-account.ts'
import { decodeBytes, wordEncoding } from './decode-bytes.ts'

/**
 * Which encodings the bytes can be read in, and how sure that is. It is certain where a mark names one, where all read
 * the same, or where no other is possible; otherwise a person who sees the text must say.
 */
export function findEncoding(account: ByteAccount): EncodingFound {
  const { mark } = account
  if (mark !== undefined) return certain(mark, `the file begins with the mark of ${wordEncoding(mark)}`)
  const wide = findWide(account)
  if (wide !== undefined) {
    const place = wide === 'utf-16le' ? 'second' : 'first'
    return certain(wide, `the ${place} byte of nearly every pair is zero, as in no other encoding`)
  }
  const options = listOptions(account)
  if (account.isAscii) {
    const why = 'there are only plain letters, which every encoding reads alike'
    return { encoding: 'utf-8', certainty: 'certain', why, options }
  }
  return account.isUtf8
    ? {
        encoding: 'utf-8',
        certainty: options.length > 1 ? 'likely' : 'certain',
        why: 'all its letters beyond plain ones are made of bytes as UTF-8 has them',
        options,
      }
    : {
        encoding: options[0]?.encoding ?? 'windows-1252',
        certainty: 'open',
        why: 'it is not UTF-8, and an encoding of single bytes says nothing of itself',
        options,
      }
}

function certain(encoding: Encoding, why: string): EncodingFound {
  return { encoding, certainty: 'certain', why, options: [{ encoding, samples: [] }] }
}

/** Latin letters in UTF-16 leave every second byte zero, and no text in another encoding holds a zero byte at all. */
function findWide({ zeros: { even, odd }, bytes }: ByteAccount): Encoding | undefined {
  if (odd > bytes / 8 && even < bytes / 64) return 'utf-16le'
  return even > bytes / 8 && odd < bytes / 64 ? 'utf-16be' : undefined
}

const ofSeveralBytes: ReadonlySet<Encoding> = new Set(['shift_jis', 'gb18030', 'big5', 'euc-kr'])

function listOptions(account: ByteAccount): EncodingOption[] {
  return encodings
    .filter(encoding => canBe(account, encoding))
    .map(encoding => ({ encoding, samples: account.telling.map(line => showLine(line, encoding)) }))
}

function canBe({ isUtf8, highBytes, telling }: ByteAccount, encoding: Encoding): boolean {
  if (encoding === 'utf-8') return isUtf8
  if (encoding === 'utf-16le' || encoding === 'utf-16be') return false
  if (ofSeveralBytes.has(encoding)) return telling.every(line => decodeBytes(line, encoding) !== undefined)
  return decodeBytes(Uint8Array.from(highBytes), encoding) !== undefined
}

const aroundTelling = 16

/** The first letter beyond plain ones, with what stands round it. */
function showLine(line: Uint8Array, encoding: Encoding): string {
  const text = (decodeBytes(line, encoding) ?? '').trim()
  const at = text.search(/\P{ASCII}/u)
  const from = Math.max(0, at - aroundTelling)
  return text.slice(from, at + aroundTelling)
}
