import { type Encoding, encodings } from '../../../shared-schemas/supplier-layouts.ts'
import type { Given } from './command.ts'
import { WrongUse } from './wrong-use.ts'

/** The encoding that was named, in whatever letter case. */
export function givenEncoding(given: Given): { readonly encoding?: Encoding } {
  const typed = given.text('encoding')?.toLowerCase()
  if (typed === undefined) return {}
  const encoding = encodings.find(known => known === typed)
  if (encoding === undefined)
    throw new WrongUse(`--encoding knows ${encodings.join(', ')}; “${typed}” is none of them.`)
  return { encoding }
}
