import type { Encoding } from '../../../shared-schemas/supplier-layouts.ts'

const decoders = new Map<Encoding, InstanceType<typeof TextDecoder>>()

/**
 * The text that these bytes are in this encoding; undefined where they are none. A byte that an encoding has no
 * character for is refused, never replaced: in encodings of one byte, so are the places of C1 controls, which the
 * Encoding Standard lets through and no text holds.
 */
export function decodeBytes(bytes: Uint8Array, encoding: Encoding): string | undefined {
  try {
    const text = decoderOf(encoding).decode(bytes)
    return holdsControls(text, encoding) ? undefined : text
  } catch {
    return undefined
  }
}

function decoderOf(encoding: Encoding): InstanceType<typeof TextDecoder> {
  let decoder = decoders.get(encoding)
  if (decoder === undefined) {
    decoder = new TextDecoder(encoding, { fatal: true, ignoreBOM: true })
    decoders.set(encoding, decoder)
  }
  return decoder
}

function holdsControls(text: string, encoding: Encoding): boolean {
  const isUnicode = encoding === 'utf-8' || encoding === 'utf-16le' || encoding === 'utf-16be'
  return !isUnicode && /[\u0080-\u009f]/.test(text)
}

/** What an encoding is called where people read it. */
export function wordEncoding(encoding: Encoding): string {
  return encoding.replace('utf', 'UTF').replace('windows', 'Windows').replace('iso', 'ISO')
}
