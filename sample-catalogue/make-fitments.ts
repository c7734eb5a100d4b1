import { brackwaterList, makersList, shopRecord, tarrowList, veldkadeList } from './awkward/sources.ts'
import { awkwardCases } from './awkward-cases.ts'
import type { SparseRow } from './catalogue-rows.ts'
import { type ChosenForms, chooseForms } from './choose-family.ts'
import { familyKinds } from './family-kinds/all-kinds.ts'
import type { FamilyKind, KindAttribute } from './family-kinds/family-kind.ts'
import { inventedBrands } from './invented-brands.ts'
import type { SampleFamily } from './make-families.ts'
import type { SampleModel } from './make-models.ts'
import type { SamplePart } from './make-parts.ts'
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
      fitments.push(...listLineFitments(takenHere, line, { forms, partsByFamily, models }))
    }
  }
  return { fitments, modelAttributes: [...listPlanted('model_attributes.csv'), ...listNeeds(taken)], taken }
}

/** What the appliance needs of an attribute of a family. */
export function neededValue(model: SampleModel, family: SampleFamily, attribute: KindAttribute): string {
  const draw = hashText(`needs ${family.code} ${attribute.attribute} ${model.line}`) % 10
  const place = draw < 7 || attribute.values.length === 1 ? 0 : 1 + (draw % (attribute.values.length - 1))
  return itemAt(attribute.needs ?? attribute.values, place)
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

/** The plug is listed for every number of every brand; the shop rules it out for hobs, which are wired in. */
function listPlugFitments(models: readonly SampleModel[]): Fitment[] {
  const plug = { family: 'fused-plug' }
  const plantedHobs = new Set(
    listPlanted('fitments.csv')
      .filter(row => row.family === plug.family)
      .map(row => row.model_number),
  )
  const all = inventedBrands.map(({ brand }) => ({
    says: 'includes',
    ...plug,
    brand,
    model_number: '*',
    quantity: '1',
    source: tarrowList,
  }))
  const hobs = models
    .filter(model => model.type === 'hob' && !plantedHobs.has(model.modelNumber))
    .map(model => ({
      says: 'excludes',
      ...plug,
      brand: model.brand,
      model_number: model.modelNumber,
      source: shopRecord,
    }))
  return [...all, ...hobs]
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
  readonly models: readonly SampleModel[]
}

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
  const wildcard = writeWildcard(taken, line, surroundings.models)
  const useWildcard = wildcard !== undefined && hashText(`wildcard ${subject}`) % 100 < 3
  const rows = useWildcard
    ? atPositions(kind, { ...wildcard, says: 'includes', source: firstSource })
    : taken.flatMap(one => includeFamily(one, firstSource))
  return [
    ...rows,
    ...others.flatMap(source => taken.flatMap(one => includeFamily(one, source))),
    ...listPartFitments(taken, subject, surroundings),
    ...listExclusions(taken, subject, surroundings),
  ]
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

function includeFamily({ model, family, conditions }: TakenFamily, source: string | undefined): Fitment[] {
  return atPositions(family.kind, {
    says: 'includes',
    family: family.code,
    brand: model.brand,
    model_number: model.modelNumber,
    ...conditions,
    source: source ?? '',
  })
}

function atPositions(kind: FamilyKind, row: Fitment): Fitment[] {
  const quantity = String(kind.quantity ?? 1)
  if (kind.positions === undefined) return [{ ...row, quantity }]
  return kind.positions.map(position => ({ ...row, position, quantity }))
}

/** The line as one listed number with a star, where that star would mean these models and no other. */
function writeWildcard(
  taken: readonly TakenFamily[],
  line: readonly SampleModel[],
  models: readonly SampleModel[],
): Fitment | undefined {
  const first = taken[0]
  if (first === undefined || line.length < 3 || taken.length !== line.length) return undefined
  const sameForm = taken.every(
    ({ family, conditions }) => family === first.family && Object.keys(conditions).length === 0,
  )
  if (!sameForm) return undefined
  const pattern = `${commonStart(line.map(model => model.modelNumber))}*`
  const brand = first.model.brand
  const meant = models.filter(
    model => model.brand === brand && matchesModelPattern(pattern, model.modelNumber),
  )
  return meant.length === line.length
    ? { family: first.family.code, brand, model_number: pattern }
    : undefined
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
    return own.slice(0, 1).flatMap(part =>
      atPositions(family.kind, {
        says: 'includes',
        part_number: part.partNumber,
        brand: model.brand,
        model_number: model.modelNumber,
        ...conditions,
        source: makersList(model.brand),
      }),
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
    return taken.flatMap(({ model, family }) =>
      (partsByFamily.get(family.code) ?? [])
        .filter(part => part.kind === 'pattern' && !part.isPlanted && suitsModel(part, model, family))
        .slice(0, 1)
        .map(part => excludeRow({ part_number: part.partNumber }, model, shopRecord)),
    )
  }
  return []
}

function excludeRow(
  subject: { readonly family: string } | { readonly part_number: string },
  model: SampleModel,
  source: string,
): Fitment {
  return { says: 'excludes', ...subject, brand: model.brand, model_number: model.modelNumber, source }
}

/** Does a part state just what the model needs? Plain agreement is enough here: the sample plants the near misses by hand. */
export function suitsModel(part: SamplePart, model: SampleModel, family: SampleFamily): boolean {
  return family.attributes.every(attribute => {
    const stated = part.states.get(attribute.attribute)
    if (attribute.attribute === 'volts') return (stated === '110..127') === (model.volts === '120')
    if (attribute.attribute === 'hertz') return stated === (model.hertz === '60' ? '60' : '50')
    if (attribute.onPlate === true) return true
    if (attribute.rule === 'at-least') return Number(stated) >= Number(neededValue(model, family, attribute))
    return stated === neededValue(model, family, attribute)
  })
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
