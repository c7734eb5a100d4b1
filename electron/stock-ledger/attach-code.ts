import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import { readScan } from '../../shared-schemas/read-scan.ts'
import { inTransaction } from '../database/handles.ts'
import { Refusal } from '../requests/refusal.ts'
import { attachableCode, findCode } from './find-code.ts'
import { partNumbered } from './named-things.ts'
import { appendPartCode } from './part-code-queries.ts'
import type { RecordingShop } from './record-movement.ts'

/** Keeps which part a code stands for. A code that stands for another part stays that part's unless it is said to be wrong. */
export function attachCode(
  shop: RecordingShop,
  { code, part, pieces, instead, initials = '' }: CheckedInput<'stock-ledger.attach-code'>,
): Output<'stock-ledger.attach-code'> {
  return inTransaction(shop.database, database => {
    const scan = readScan(code)
    const kept = attachableCode(scan)
    if (kept === undefined)
      throw new Refusal({
        code: 'code-not-attachable',
        why: scan.kind === 'misread' || scan.kind === 'trade-item' ? 'misread' : 'label',
      })
    const found = findCode(database, code)
    if (found.kind === 'location') throw new Refusal({ code: 'code-not-attachable', why: 'label' })
    const { partId, partNumber } = partNumbered(database, part)
    if (found.kind === 'part' && found.partNumber !== partNumber && !instead)
      throw new Refusal({ code: 'code-of-another-part', scanned: kept, partNumber: found.partNumber })
    appendPartCode(database, shop, { code: kept, partId, pieces, initials })
    return { partNumber, pieces }
  })
}
