import type { SparseRow } from './catalogue-rows.ts'
import { familyKinds } from './family-kinds/all-kinds.ts'
import type { FamilyKind, KindAttribute } from './family-kinds/family-kind.ts'
import { listPlanted } from './planted-rows.ts'
import { itemAt } from './seeded-random.ts'

/** One form of a kind: parts that are interchangeable but for the values that its attributes state. */
export type SampleFamily = {
  readonly code: string
  readonly name: string
  readonly kind: FamilyKind
  readonly form: number
  readonly attributes: readonly KindAttribute[]
}

/** Every family that comes from a kind; families that exist for one awkward case only are planted beside them. */
export function makeFamilies(): SampleFamily[] {
  return familyKinds.flatMap(kind =>
    kind.forms.map((formName, form) => ({
      code: familyCode(kind, formName),
      name: formName === '' ? kind.name : `${kind.name}, ${formName}`,
      kind,
      form,
      attributes: shareOutValues(kind, form),
    })),
  )
}

export function listFamilyRows(families: readonly SampleFamily[]): SparseRow<'families.csv'>[] {
  const made = families.map(family => ({
    family: family.code,
    name: family.name,
    function: family.kind.does,
    appliance_types: family.kind.types.join('|'),
    hazards: family.kind.hazards.join('|'),
    safety_device: family.kind.safetyDevice ? 'yes' : 'no',
  }))
  return [...made, ...listPlanted('families.csv')]
}

export function listAttributeRows(families: readonly SampleFamily[]): SparseRow<'attributes.csv'>[] {
  const made = families.flatMap(family =>
    family.attributes.map(({ attribute, unit, rule, tolerance = '' }) => ({
      family: family.code,
      attribute,
      unit,
      rule,
      tolerance,
    })),
  )
  return [...made, ...listPlanted('attributes.csv')]
}

function familyCode(kind: FamilyKind, formName: string): string {
  const words = `${kind.kind} ${formName}`.trim().toLowerCase()
  return words.replace(/[^a-z0-9]+/g, '-')
}

/** The first attribute with a choice keeps several values, so that it decides between the parts of one family; the others settle on one. */
function shareOutValues(kind: FamilyKind, form: number): KindAttribute[] {
  const deciding = kind.attributes.find(
    attribute => attribute.onPlate !== true && attribute.values.length > 1,
  )
  return kind.attributes.map(attribute => {
    const many = attribute === deciding ? Math.min(attribute.values.length, 3) : 1
    const values = Array.from({ length: many }, (_, index) => itemAt(attribute.values, form + index))
    return { ...attribute, values }
  })
}
