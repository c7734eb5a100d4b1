import type { Caution } from '../../shared-schemas/fit-check.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import { daysInBoth, wordDays } from './made-dates.ts'
import type { ModelFacts } from './part-dossier.ts'
import { contradicts, plateUnits } from './rule-out-models.ts'
import { daysOfModel, type Readings } from './suppose-appliances.ts'

/** What does not go together between the plate as read and the catalogue: each makes the model number itself doubtful. */
export function cautionsOfReading(
  open: OpenModels,
  models: readonly ModelFacts[],
  readings: Readings,
): Caution[] {
  if (models.length === 0) return []
  return [
    ...cautionLookalikes(open),
    ...cautionMade(models, readings),
    ...cautionSerial(models, readings),
    ...cautionSupply(models, readings),
  ]
}

function cautionLookalikes({ agreement, models, typed }: OpenModels): Caution[] {
  const [model] = models
  if (agreement !== 'confusable' || model === undefined) return []
  const read = models.length === 1 ? model.modelNumber : 'the numbers that look alike'
  return [
    {
      code: 'read-as',
      text: `“${typed}” was read as ${read}: characters that look alike differ. Compare with the plate.`,
    },
  ]
}

function cautionMade(models: readonly ModelFacts[], { made }: Readings): Caution[] {
  if (made === null || models.some(model => daysInBoth(model.made, made) !== undefined)) return []
  const [model] = models
  const when = models.length === 1 && model !== undefined ? ` (${wordDays(model.made)})` : ''
  return [
    {
      code: 'made-outside',
      text: `The date of making, ${wordDays(made)}, lies outside the time this model was made${when}. Check the date and the model number.`,
    },
  ]
}

function cautionSerial(models: readonly ModelFacts[], { serial, made }: Readings): Caution[] {
  const [model] = models
  if (serial === null || model === undefined || model.madeBySerial.length === 0) return []
  const possible = daysOfModel({ ...model, madeBySerial: [] }, made)
  if (model.madeBySerial.some(days => possible.some(other => daysInBoth(days, other) !== undefined)))
    return []
  const when = model.madeBySerial.map(wordDays).join(' or ')
  return [
    {
      code: 'serial-date-differs',
      text: `By its date code serial ${serial} was made ${when}, which does not go with the date read or with this model. Check the serial and the model number.`,
    },
  ]
}

function cautionSupply(models: readonly ModelFacts[], { stated }: Readings): Caution[] {
  return plateUnits
    .filter(([plate, unit]) => models.every(model => contradicts(stated.get(plate), model[plate], unit)))
    .map(([plate, unit]) => ({
      code: `${plate}-differ`,
      text: `The plate reads ${stated.get(plate)} ${unit}; the catalogue has another value for this model. Check the model number and its suffix.`,
    }))
}
