import type { KindAttribute } from './family-kinds/family-kind.ts'
import type { SampleFamily } from './make-families.ts'
import type { SampleModel } from './make-models.ts'
import type { SamplePart } from './make-parts.ts'
import { hashText, itemAt } from './seeded-random.ts'

/**
 * The part of a safety device that a list names for a model, since the family's word is not enough there: the brand's
 * own, else another genuine one, else the first that suits. Undefined where the family has none that suits.
 */
export function chooseListedPart(
  model: SampleModel,
  family: SampleFamily,
  partsOfFamily: readonly SamplePart[],
): SamplePart | undefined {
  const suiting = partsOfFamily.filter(part => part.replacedBy === '' && suitsModel(part, model, family))
  const genuine = suiting.filter(({ kind }) => kind === 'genuine')
  return genuine.find(({ maker }) => maker === model.brand) ?? genuine[0] ?? suiting[0]
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

/** What the appliance needs of an attribute of a family. */
export function neededValue(model: SampleModel, family: SampleFamily, attribute: KindAttribute): string {
  const draw = hashText(`needs ${family.code} ${attribute.attribute} ${model.line}`) % 10
  const place = draw < 7 || attribute.values.length === 1 ? 0 : 1 + (draw % (attribute.values.length - 1))
  return itemAt(attribute.needs ?? attribute.values, place)
}
