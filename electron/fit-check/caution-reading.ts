import type { Caution } from '../../shared-schemas/fit-check.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import { daysInBoth, wordDays } from './made-dates.ts'
import { readValue } from './measured-values.ts'
import type { ModelFacts } from './part-dossier.ts'
import type { Readings } from './suppose-appliances.ts'

/** What does not go together between the plate as read and the catalogue: each makes the model number itself doubtful. */
export function cautionsOfReading(
  open: OpenModels,
  models: readonly ModelFacts[],
  readings: Readings,
): Caution[] {
  return [...cautionLookalikes(open), ...cautionMade(models, readings), ...cautionVolts(models, readings)]
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

function cautionVolts(models: readonly ModelFacts[], { stated }: Readings): Caution[] {
  const read = readValue(stated.get('volts') ?? '', 'V')
  if (read?.kind !== 'numbers') return []
  const overlaps = models.some(({ volts }) => {
    const listed = readValue(volts ?? '', 'V')
    if (listed?.kind !== 'numbers') return true
    return listed.alternatives.some(one =>
      read.alternatives.some(other => one.low <= other.high && other.low <= one.high),
    )
  })
  if (overlaps) return []
  return [
    {
      code: 'volts-differ',
      text: `The plate reads ${stated.get('volts')} V, the catalogue has another supply for this model. Check the model number and its suffix.`,
    },
  ]
}
