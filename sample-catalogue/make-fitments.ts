import { brackwaterList, makersList, shopRecord, tarrowList, veldkadeList } from './awkward/sources.ts'
import { awkwardCases } from './awkward-cases.ts'
import type { SparseRow } from './catalogue-rows.ts'
import { type ChosenForms, chooseForms } from './choose-family.ts'
import { chooseListedPart, neededValue, suitsModel } from './choose-listed-part.ts'
import { familyKinds } from './family-kinds/all-kinds.ts'
import type { FamilyKind } from './family-kinds/family-kind.ts'
import { inventedBrands } from './invented-brands.ts'
import type { SampleFamily } from './make-families.ts'
import type { SampleModel } from './make-models.ts'
import type { SamplePart } from './make-parts.ts'
import { listSupersessions } from './make-supersessions.ts'
import { matchesModelPattern } from './match-model-pattern.ts'
import { monthText } from './months.ts'
import { listPlanted } from './planted-rows.ts'
import { hashText, itemAt } from './seeded-random.ts'

type Fitment = SparseRow<'fitments.csv'>

/** A family that a model takes, under no condition or under one: what jobs and stock are drawn from. */
export type TakenFamily = {
  readonly model: SampleModel
  readonly family: SampleFamily
  readonly conditions: Readonly<{
    made_from?: string
    made_to?: string
    serial_from?: string
    serial_to?: string
  }>
}

export type Fitted = {
  readonly fitments: readonly Fitment[]
  readonly modelAttributes: readonly SparseRow<'model_attributes.csv'>[]
  readonly taken: readonly TakenFamily[]
}

/** Says of every model what goes into it and what does not, and what it needs of each family. */
export function makeFitments(
  models: readonly SampleModel[],
  families: readonly SampleFamily[],
  parts: readonly SamplePart[],
): Fitted {
  const formsByKind = Map.groupBy(families, family => family.kind.kind)
  const partsByFamily = Map.groupBy(parts, part => part.family)
  const oldNumbers = listOldNumbers(parts)
  const reserved = listReserved(models, families, parts)
  const lines = Map.groupBy(models, model => model.line)
  const fitments: Fitment[] = [...listPlanted('fitments.csv'), ...listPlugFitments(models)]
  const taken: TakenFamily[] = []
  for (const line of lines.values()) {
    for (const kind of familyKinds) {
      const free = line.filter(model => !reserved.has(`${model.brand}\t${model.modelNumber}\t${kind.kind}`))
      const forms = formsByKind.get(kind.kind) ?? []
      const takenHere = free.flatMap(model => takeForms(model, chooseForms(model, kind, forms)))
      taken.push(...takenHere)
      fitments.push(...listLineFitments(takenHere, line, { forms, partsByFamily, oldNumbers, models }))
    }
  }
  return { fitments, modelAttributes: [...listPlanted('model_attributes.csv'), ...listNeeds(taken)], taken }
}

/** Model and kind pairs that an awkward case has spoken about: the ordinary catalogue keeps silent there. */
function listReserved(
  models: readonly SampleModel[],
  families: readonly SampleFamily[],
  parts: readonly SamplePart[],
): Set<string> {
  const kindOfFamily = new Map(families.map(family => [family.code, family.kind.kind]))
  const familyOfPart = new Map(parts.map(part => [part.partNumber, part.family]))
  const spoken = listPlanted('fitments.csv').map(row => ({
    brand: row.brand ?? '',
    model: row.model_number ?? '',
    family: row.family ?? familyOfPart.get(row.part_number ?? '') ?? '',
  }))
  const silent = awkwardCases.flatMap(awkwardCase => awkwardCase.silent ?? [])
  const reserved = new Set<string>()
  for (const { brand, model: pattern, family } of [...spoken, ...silent]) {
    for (const model of models) {
      if (model.brand !== brand || !matchesModelPattern(pattern, model.modelNumber)) continue
      reserved.add(`${brand}\t${model.modelNumber}\t${kindOfFamily.get(family) ?? family}`)
    }
  }
  return reserved
}

/** For parts that took an older number's place, whenever the machine was made and with nothing bought besides: that number. */
function listOldNumbers(parts: readonly SamplePart[]): ReadonlyMap<string, string> {
  return new Map(
    listSupersessions(parts)
      .filter(row => [row.made_from, row.made_to, row.also_needs].every(cell => (cell ?? '') === ''))
      .map(row => [row.new_part ?? '', row.old_part ?? '']),
  )
}

/**
 * The black plug is listed by number for every model of every brand; the shop rules it out for hobs, which are wired
 * in. A supplier lists the family besides, which for a safety device is not enough: the white plug has no record.
 */
function listPlugFitments(models: readonly SampleModel[]): Fitment[] {
  const black = { part_number: 'DR-10401' }
  const plantedHobs = new Set(
    listPlanted('fitments.csv')
      .filter(row => row.part_number === black.part_number)
      .map(row => row.model_number),
  )
  const includeAll = (subject: Subject, source: string) =>
    inventedBrands.map(({ brand }) => ({
      says: 'includes',
      ...subject,
      brand,
      model_number: '*',
      quantity: '1',
      source,
    }))
  const hobs = models.filter(model => model.type === 'hob' && !plantedHobs.has(model.modelNumber))
  return [
    ...includeAll(black, tarrowList),
    ...includeAll({ family: 'fused-plug' }, veldkadeList),
    ...hobs.map(model => excludeRow(black, model, shopRecord)),
  ]
}

function takeForms(model: SampleModel, chosen: ChosenForms | undefined): TakenFamily[] {
  if (chosen === undefined) return []
  switch (chosen.parted) {
    case 'not':
      return [{ model, family: chosen.family, conditions: {} }]
    case 'by-month':
      return [
        { model, family: chosen.early, conditions: { made_to: monthText(chosen.from - 1) } },
        { model, family: chosen.late, conditions: { made_from: monthText(chosen.from) } },
      ]
    case 'by-serial':
      return [
        { model, family: chosen.early, conditions: { serial_from: '10000000', serial_to: chosen.lastEarly } },
        { model, family: chosen.late, conditions: { serial_from: chosen.firstLate, serial_to: '99999999' } },
      ]
  }
}

type Surroundings = {
  readonly forms: readonly SampleFamily[]
  readonly partsByFamily: ReadonlyMap<string, readonly SamplePart[]>
  readonly oldNumbers: ReadonlyMap<string, string>
  readonly models: readonly SampleModel[]
}

type Subject = { readonly family: string } | { readonly part_number: string }

/** A taken family under the name by which a list speaks of it: its own, or a part number. */
type Listing = TakenFamily & { readonly subject: Subject }

/** What the sources say of one line and one kind. */
function listLineFitments(
  taken: readonly TakenFamily[],
  line: readonly SampleModel[],
  surroundings: Surroundings,
): Fitment[] {
  const first = taken[0]
  if (first === undefined) return []
  const kind = first.family.kind
  const subject = `${kind.kind} ${first.model.line}`
  const [firstSource, ...others] = listSources(first.model.brand, subject)
  const listings = taken.map(one => ({ ...one, subject: nameListed(one, subject, surroundings) }))
  const wildcard = writeWildcard(listings, line, surroundings.models)
  const useWildcard = wildcard !== undefined && hashText(`wildcard ${subject}`) % 100 < 3
  const rows = useWildcard
    ? atPositions(kind, { ...wildcard, says: 'includes', source: firstSource })
    : listings.flatMap(one => include(one, firstSource))
  return [
    ...rows,
    ...others.flatMap(source => listings.flatMap(one => include(one, source))),
    ...(kind.safetyDevice
      ? listBesides(taken, subject, firstSource, surroundings)
      : listPartFitments(taken, subject, surroundings)),
    ...listExclusions(taken, subject, surroundings),
  ]
}

/** A safety device is listed by number, in one line of three by an old one where it has one; where no part suits, and for all else, the family is. */
function nameListed(
  { model, family }: TakenFamily,
  subject: string,
  { partsByFamily, oldNumbers }: Surroundings,
): Subject {
  if (!family.kind.safetyDevice) return { family: family.code }
  const listed = chooseListedPart(model, family, partsByFamily.get(family.code) ?? [])
  if (listed === undefined) return { family: family.code }
  const old = hashText(`old number ${subject}`) % 3 === 0 ? oldNumbers.get(listed.partNumber) : undefined
  return { part_number: old ?? listed.partNumber }
}

/** Of safety devices a supplier lists a pattern part by number for a quarter of the lines, and now and then the family as a whole. */
function listBesides(
  taken: readonly TakenFamily[],
  subject: string,
  firstSource: string,
  { partsByFamily }: Surroundings,
): Fitment[] {
  const draw = hashText(`besides ${subject}`) % 100
  const suppliers = [tarrowList, brackwaterList, veldkadeList].filter(source => source !== firstSource)
  const supplier = itemAt(suppliers, draw)
  return taken.flatMap(one => {
    const parts = partsByFamily.get(one.family.code) ?? []
    const listed = chooseListedPart(one.model, one.family, parts)
    if (listed === undefined || draw >= 30) return []
    if (draw >= 25) return include({ ...one, subject: { family: one.family.code } }, supplier)
    return findPatternPart(one, parts, listed).flatMap(({ partNumber }) =>
      include({ ...one, subject: { part_number: partNumber } }, supplier),
    )
  })
}

/** One source for most lines, two for a good part, three now and then. */
function listSources(brand: string, subject: string): [string, ...string[]] {
  const lists = [tarrowList, makersList(brand), brackwaterList, veldkadeList, shopRecord]
  const draw = hashText(`sources ${subject}`)
  const howMany = draw % 100 < 78 ? 0 : draw % 100 < 97 ? 1 : 2
  const start = Math.floor(draw / 100) % lists.length
  return [
    itemAt(lists, start),
    ...Array.from({ length: howMany }, (_, index) => itemAt(lists, start + 1 + index)),
  ]
}

function include({ model, family, conditions, subject }: Listing, source: string): Fitment[] {
  return atPositions(family.kind, {
    says: 'includes',
    ...subject,
    brand: model.brand,
    model_number: model.modelNumber,
    ...conditions,
    source,
  })
}

function atPositions(kind: FamilyKind, row: Fitment): Fitment[] {
  const quantity = String(kind.quantity ?? 1)
  if (kind.positions === undefined) return [{ ...row, quantity }]
  return kind.positions.map(position => ({ ...row, position, quantity }))
}

/** The line as one listed number with a star, where that star would mean these models and no other. */
function writeWildcard(
  listings: readonly Listing[],
  line: readonly SampleModel[],
  models: readonly SampleModel[],
): Fitment | undefined {
  const first = listings[0]
  if (first === undefined || line.length < 3 || listings.length !== line.length) return undefined
  const sameName = listings.every(
    ({ subject, conditions }) =>
      nameOf(subject) === nameOf(first.subject) && Object.keys(conditions).length === 0,
  )
  if (!sameName) return undefined
  const pattern = `${commonStart(line.map(model => model.modelNumber))}*`
  const brand = first.model.brand
  const meant = models.filter(
    model => model.brand === brand && matchesModelPattern(pattern, model.modelNumber),
  )
  return meant.length === line.length ? { ...first.subject, brand, model_number: pattern } : undefined
}

function nameOf(subject: Subject): string {
  return 'family' in subject ? subject.family : subject.part_number
}

function commonStart(numbers: readonly string[]): string {
  const [first = '', ...others] = numbers
  let length = first.length
  while (!others.every(other => other.startsWith(first.slice(0, length)))) length -= 1
  return first.slice(0, length)
}

/** Makers list some of their own parts by number besides. */
function listPartFitments(
  taken: readonly TakenFamily[],
  subject: string,
  { partsByFamily }: Surroundings,
): Fitment[] {
  if (hashText(`part list ${subject}`) % 100 >= 9) return []
  return taken.flatMap(({ model, family, conditions }) => {
    const own = (partsByFamily.get(family.code) ?? []).filter(
      part => part.maker === model.brand && !part.isPlanted && suitsModel(part, model, family),
    )
    return own
      .slice(0, 1)
      .flatMap(({ partNumber }) =>
        include({ model, family, conditions, subject: { part_number: partNumber } }, makersList(model.brand)),
      )
  })
}

/** A supplier rules the other form out, or the shop has had a pattern part come back. */
function listExclusions(
  taken: readonly TakenFamily[],
  subject: string,
  { forms, partsByFamily }: Surroundings,
): Fitment[] {
  const draw = hashText(`exclusions ${subject}`) % 1000
  const usedForms = new Set(taken.map(({ family }) => family))
  const otherForm = forms.find(form => !usedForms.has(form))
  if (draw < 25 && otherForm !== undefined) {
    const models = new Set(taken.map(({ model }) => model))
    return [...models].map(model => excludeRow({ family: otherForm.code }, model, brackwaterList))
  }
  if (draw < 45) {
    return taken.flatMap(one => {
      const parts = partsByFamily.get(one.family.code) ?? []
      // Of a safety device the one part that is listed is not ruled out: the machine would be left without.
      const spared = one.family.kind.safetyDevice ? chooseListedPart(one.model, one.family, parts) : undefined
      return findPatternPart(one, parts, spared).map(({ partNumber }) =>
        excludeRow({ part_number: partNumber }, one.model, shopRecord),
      )
    })
  }
  return []
}

/** The first pattern part that suits, as a list of one or none; never the one spared. */
function findPatternPart(
  { model, family }: TakenFamily,
  parts: readonly SamplePart[],
  spared: SamplePart | undefined,
): SamplePart[] {
  return parts
    .filter(
      part =>
        part.kind === 'pattern' && !part.isPlanted && part !== spared && suitsModel(part, model, family),
    )
    .slice(0, 1)
}

function excludeRow(subject: Subject, model: SampleModel, source: string): Fitment {
  return { says: 'excludes', ...subject, brand: model.brand, model_number: model.modelNumber, source }
}

function listNeeds(taken: readonly TakenFamily[]): SparseRow<'model_attributes.csv'>[] {
  return taken.flatMap(({ model, family }) =>
    family.attributes
      .filter(attribute => attribute.onPlate !== true)
      .map(attribute => ({
        brand: model.brand,
        model_number: model.modelNumber,
        family: family.code,
        attribute: attribute.attribute,
        value: neededValue(model, family, attribute),
      })),
  )
}
