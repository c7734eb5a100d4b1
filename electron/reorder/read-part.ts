import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import type { Shop } from '../requests/shop.ts'
import { partNumbered } from '../stock-ledger/named-things.ts'
import { listUses } from './part-use-queries.ts'
import { listShelfLimits } from './plan-queries.ts'
import { readPreferredSuppliers } from './proposal/proposal-queries.ts'

/** What the shop has said of a part, and its latest uses of the last year. */
export function readPart(
  { database, now }: Pick<Shop, 'database' | 'now'>,
  { part }: CheckedInput<'reorder.read-part'>,
): Output<'reorder.read-part'> {
  const { partId, partNumber } = partNumbered(database, part)
  const uses = listUses(database, partId, now())
  return {
    partNumber,
    shelfLimit: listShelfLimits(database).get(partId) ?? null,
    preferredSupplier: readPreferredSuppliers(database).get(partId) ?? null,
    uses: uses.slice(0, mostUses),
    earlierUses: Math.max(0, uses.length - mostUses),
  }
}

/** More than anybody reads through to find an odd one. */
const mostUses = 200
