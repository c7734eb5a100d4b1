import { z } from 'zod'
import { type FamilyId, familyId, type PartId, partId, partNumber } from '../../shared-schemas/identifiers.ts'
import { readCatalogueVersion } from '../catalogue/catalogue-state-queries.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { KitShelf } from './kit-queries.ts'
import { daysBetween } from './made-dates.ts'
import type { FamilyFacts, PartDossier, PartFacts, Replacement, Statement } from './part-dossier.ts'
import { readReplacedTogether } from './replaced-together-queries.ts'
import { listSiblingParts, type SiblingPart } from './sibling-queries.ts'
import { SisterShelf } from './sister-shelf.ts'

/** Dossiers and families as read, kept until the catalogue changes, so that the same part is read once. */
export class DossierShelf {
  readonly version: number
  readonly #database: ReadableDatabase
  readonly #dossiers = new Map<PartId, PartDossier>()
  readonly #families = new Map<FamilyId, FamilyFacts>()
  readonly #saidOfFamilies = new Map<FamilyId, readonly Statement[]>()
  readonly #siblings = new Map<FamilyId, readonly SiblingPart[]>()
  readonly #kits: KitShelf
  readonly sisters: SisterShelf

  constructor(database: ReadableDatabase, version: number) {
    this.#database = database
    this.#kits = new KitShelf(database)
    this.sisters = new SisterShelf(database)
    this.version = version
  }

  dossier(asked: PartId): PartDossier {
    return keep(this.#dossiers, asked, () => this.#readDossier(asked))
  }

  family(id: FamilyId): FamilyFacts {
    return keep(this.#families, id, () => readFamilyFacts(this.#database, id))
  }

  /** The parts of a family, genuine before pattern, then by number. */
  siblings(id: FamilyId): readonly SiblingPart[] {
    return keep(this.#siblings, id, () => listSiblingParts(this.#database, id))
  }

  #saidOfFamily(id: FamilyId): readonly Statement[] {
    return keep(this.#saidOfFamilies, id, () => listStatements(this.#database, 'family_id', id))
  }

  #readDossier(asked: PartId): PartDossier {
    const database = this.#database
    const replacements = readReplacementsRound(database, asked)
    const partIds = new Set([asked, ...replacements.flatMap(step => [step.old, step.new])])
    const parts = new Map([...partIds].map(id => [id, readPartFacts(database, id)]))
    const familyIds = new Set([...parts.values()].map(part => part.familyId))
    return {
      asked: parts.get(asked) ?? readPartFacts(database, asked),
      parts,
      families: new Map([...familyIds].map(id => [id, this.family(id)])),
      replacements,
      statements: [
        ...[...partIds].flatMap(id => listStatements(database, 'part_id', id)),
        ...[...familyIds].flatMap(id => this.#saidOfFamily(id)),
      ],
      replacedTogether: readReplacedTogether(database, partIds),
      contents: mapFilled(partIds, id => this.#kits.contentsOf(id)),
      kitsWith: mapFilled(partIds, id => this.#kits.kitsWith(id)),
    }
  }
}

/** The shelf of the catalogue as it stands now: a fresh one when any program has loaded something since. */
export function currentShelf(database: ReadableDatabase): DossierShelf {
  const version = readCatalogueVersion(database)
  const kept = shelves.get(database)
  if (kept?.version === version) return kept
  const fresh = new DossierShelf(database, version)
  shelves.set(database, fresh)
  return fresh
}

const shelves = new WeakMap<ReadableDatabase, DossierShelf>()

function keep<Key, Value>(kept: Map<Key, Value>, key: Key, read: () => Value): Value {
  const known = kept.get(key)
  if (known !== undefined) return known
  const fresh = read()
  kept.set(key, fresh)
  return fresh
}

function mapFilled<Item>(
  partIds: Iterable<PartId>,
  list: (partId: PartId) => readonly Item[],
): ReadonlyMap<PartId, readonly Item[]> {
  return new Map([...partIds].map(id => [id, list(id)] as const).filter(([, items]) => items.length > 0))
}

const replacementRow = z.object({
  supersession_id: z.int(),
  old_part_id: partId,
  new_part_id: partId,
  way: z.enum(['one', 'both']),
  made_from: z.string().nullable(),
  made_to: z.string().nullable(),
})

/** Every replacement that is joined to the part, however many steps away, in the order in which they were stated. */
function readReplacementsRound(database: ReadableDatabase, asked: PartId): Replacement[] {
  const reached = new Set([asked])
  const found = new Map<number, z.output<typeof replacementRow>>()
  for (const id of reached) {
    const rows = database.rows(
      replacementRow,
      `SELECT supersession_id, old_part_id, new_part_id, way, made_from, made_to FROM supersession
       WHERE old_part_id = ?1 OR new_part_id = ?1`,
      id,
    )
    for (const row of rows) {
      found.set(row.supersession_id, row)
      reached.add(row.old_part_id).add(row.new_part_id)
    }
  }
  return [...found.values()]
    .sort((one, other) => one.supersession_id - other.supersession_id)
    .map(row => ({
      old: row.old_part_id,
      new: row.new_part_id,
      way: row.way,
      made: daysBetween(row.made_from, row.made_to),
      alsoNeeds: listNeeds(database, row.supersession_id),
    }))
}

const needRow = z.object({ part_number: partNumber })

function listNeeds(database: ReadableDatabase, supersessionId: number) {
  return database
    .rows(
      needRow,
      `SELECT part_number FROM supersession_need JOIN part USING (part_id)
       WHERE supersession_id = ? ORDER BY part_number`,
      supersessionId,
    )
    .map(row => row.part_number)
}

const partRow = z.object({
  part_number: partNumber,
  family_id: familyId,
  kind: z.enum(['genuine', 'pattern']),
  maker: z.string(),
  description: z.string(),
})

const attributeRow = z.object({ attribute: z.string(), value: z.string() })

function readPartFacts(database: ReadableDatabase, id: PartId): PartFacts {
  const row = database.row(
    partRow,
    'SELECT part_number, family_id, kind, maker, description FROM part WHERE part_id = ?',
    id,
  )
  if (row === undefined) throw new Error(`a part id comes from this database, but ${id} is not in it`)
  const attributes = database.rows(
    attributeRow,
    'SELECT attribute, value FROM part_attribute WHERE part_id = ?',
    id,
  )
  return {
    partId: id,
    partNumber: row.part_number,
    familyId: row.family_id,
    kind: row.kind,
    maker: row.maker,
    description: row.description,
    attributes: new Map(attributes.map(({ attribute, value }) => [attribute, value])),
  }
}

const familyRow = z.object({
  family: z.string(),
  name: z.string(),
  function: z.string(),
  safety_device: z.int(),
})

const ruleRow = z.object({
  attribute: z.string(),
  unit: z.string(),
  rule: z.enum(['equal', 'within', 'at-least', 'at-most', 'covers']),
  tolerance: z.number().nullable(),
})

function readFamilyFacts(database: ReadableDatabase, id: FamilyId): FamilyFacts {
  const row = database.row(
    familyRow,
    'SELECT family, name, function, safety_device FROM family WHERE family_id = ?',
    id,
  )
  if (row === undefined) throw new Error(`a family id comes from this database, but ${id} is not in it`)
  return {
    familyId: id,
    family: row.family,
    name: row.name,
    function: row.function,
    safetyDevice: row.safety_device === 1,
    hazards: listHazards(database, id),
    attributes: database.rows(
      ruleRow,
      'SELECT attribute, unit, rule, tolerance FROM family_attribute WHERE family_id = ? ORDER BY attribute',
      id,
    ),
    differing: new Set(listDifferingAttributes(database, id)),
  }
}

const hazardRow = z.object({ hazard: z.string() })

function listHazards(database: ReadableDatabase, id: FamilyId): string[] {
  return database
    .rows(hazardRow, 'SELECT hazard FROM family_hazard WHERE family_id = ? ORDER BY hazard', id)
    .map(({ hazard }) => hazard)
}

const differingRow = z.object({ attribute: z.string() })

function listDifferingAttributes(database: ReadableDatabase, id: FamilyId): string[] {
  return database
    .rows(
      differingRow,
      `SELECT attribute FROM part JOIN part_attribute USING (part_id) WHERE family_id = ?
       GROUP BY attribute HAVING count(DISTINCT value) > 1`,
      id,
    )
    .map(({ attribute }) => attribute)
}

const statementRow = z.object({
  terms_id: z.int(),
  says: z.enum(['includes', 'excludes']),
  part_id: partId.nullable(),
  family_id: familyId.nullable(),
  made_from: z.string().nullable(),
  made_to: z.string().nullable(),
  serial_from: z.string().nullable(),
  serial_to: z.string().nullable(),
  position: z.string().nullable(),
  quantity: z.int().nullable(),
  source: z.string(),
})

const statementColumns = `terms_id, says, part_id, family_id, made_from, made_to, serial_from, serial_to, position,
  quantity, source.name AS source`

/** What is said of a part or a family of any model now. What was taken back from every model is left to the history. */
function listStatements(
  database: ReadableDatabase,
  subject: 'part_id' | 'family_id',
  id: number,
): Statement[] {
  return database
    .rows(
      statementRow,
      `SELECT ${statementColumns} FROM fitment_terms JOIN source USING (source_id)
       WHERE ${subject} = ? AND EXISTS (SELECT 1 FROM fitment_by_terms AS said WHERE said.terms_id = fitment_terms.terms_id)
       ORDER BY terms_id`,
      id,
    )
    .map(asStatement)
}

/** The statements with these terms, whether they are still said of any model or not. */
export function listStatementsOfTerms(database: ReadableDatabase, termsIds: readonly number[]): Statement[] {
  return database
    .rows(
      statementRow,
      `SELECT ${statementColumns}
       FROM json_each(?) AS asked JOIN fitment_terms ON terms_id = asked.value JOIN source USING (source_id)
       ORDER BY terms_id`,
      JSON.stringify(termsIds),
    )
    .map(asStatement)
}

function asStatement(row: z.output<typeof statementRow>): Statement {
  return {
    termsId: row.terms_id,
    says: row.says,
    partId: row.part_id,
    familyId: row.family_id,
    made: daysBetween(row.made_from, row.made_to),
    serial:
      row.serial_from === null && row.serial_to === null
        ? null
        : { from: row.serial_from, to: row.serial_to },
    position: row.position,
    quantity: row.quantity,
    source: row.source,
  }
}
