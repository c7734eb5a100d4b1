import { z } from 'zod'
import { type PartId, partId, partNumber } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { KitContent, KitWith } from './part-dossier.ts'

/** Kits as read, each once, since a small kit comes in many large ones. The loader has refused every loop. */
export class KitShelf {
  readonly #database: ReadableDatabase
  readonly #contents = new Map<PartId, readonly KitContent[]>()

  constructor(database: ReadableDatabase) {
    this.#database = database
  }

  /** All that comes in the part, by number, kits within it opened as well; nothing where it is no kit. */
  contentsOf(kit: PartId): readonly KitContent[] {
    const known = this.#contents.get(kit)
    if (known !== undefined) return known
    const direct = listContents(this.#database, kit)
    const all = addUp(direct.flatMap(content => [content, ...this.#within(content)]))
    this.#contents.set(kit, all)
    return all
  }

  #within({ partId: inner, quantity }: KitContent): KitContent[] {
    return this.contentsOf(inner).map(content => ({
      ...content,
      quantity: Math.min(content.quantity * quantity, mostPieces),
    }))
  }

  /** Every kit in which the part comes, itself or in a smaller kit, those that hold it directly first. */
  kitsWith(part: PartId): KitWith[] {
    const found = new Map<PartId, KitWith>()
    const reached = new Set([part])
    for (const inner of reached) {
      for (const row of listKitsWith(this.#database, inner)) {
        found.set(row.part_id, { partNumber: row.part_number, contents: this.contentsOf(row.part_id) })
        reached.add(row.part_id)
      }
    }
    return [...found.values()]
  }
}

/** Enough for any job; kits in kits in kits would soon count further than a whole number goes. */
const mostPieces = 1_000_000

function addUp(contents: readonly KitContent[]): KitContent[] {
  const byPart = new Map<PartId, KitContent>()
  for (const content of contents) {
    const quantity = content.quantity + (byPart.get(content.partId)?.quantity ?? 0)
    byPart.set(content.partId, { ...content, quantity: Math.min(quantity, mostPieces) })
  }
  return [...byPart.values()].sort((one, other) => (one.partNumber < other.partNumber ? -1 : 1))
}

const contentRow = z.object({ part_id: partId, part_number: partNumber, quantity: z.int() })

function listContents(database: ReadableDatabase, kit: PartId): KitContent[] {
  return database
    .rows(
      contentRow,
      `SELECT kit_content.part_id, part_number, quantity
       FROM kit_content JOIN part ON part.part_id = kit_content.part_id WHERE kit_part_id = ?`,
      kit,
    )
    .map(row => ({ partId: row.part_id, partNumber: row.part_number, quantity: row.quantity }))
}

const kitRow = z.object({ part_id: partId, part_number: partNumber })

function listKitsWith(database: ReadableDatabase, part: PartId) {
  return database.rows(
    kitRow,
    `SELECT part.part_id, part_number FROM kit_content JOIN part ON part.part_id = kit_part_id
     WHERE kit_content.part_id = ? ORDER BY part_number`,
    part,
  )
}
