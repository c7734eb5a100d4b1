import { z } from 'zod'
import type { FaultCheck } from '../../shared-schemas/fault-guide.ts'
import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { GuideOfSymptom } from './guide.ts'
import type { ReadingFacts } from './readings/find-limits.ts'

/** The attributes of `attributes.csv` that readings are judged by, in the unit that each is declared with. */
const heaterPower = 'element power'
const sensorResistance = 'resistance'

/**
 * What the catalogue states of the part that a check measures: the watts of a heater, the ohms of a thermistor at 25 °C.
 * Of several models, only what they all share.
 */
export function readStatedValues(
  database: ReadableDatabase,
  modelIds: readonly ModelId[],
  families: readonly string[],
): Required<Pick<ReadingFacts, 'heaterWatts' | 'ohmsAt25'>> {
  const read = (attribute: string) => readShared(database, { modelIds, families, attribute })
  return { heaterWatts: read(heaterPower), ohmsAt25: read(sensorResistance) }
}

/** Whether the limits of a check come of what the catalogue states of the part, so that it is worth reading. */
export function isReckoned({ expected }: FaultCheck): boolean {
  return expected !== null && /^(heater|ntc)\b/.test(expected)
}

/** The families of the parts of which a check tells more than of the others. */
export function familiesOfCheck({ causes }: GuideOfSymptom, { byCause }: FaultCheck): string[] {
  const told = causes.filter(({ cause }) => byCause.some(said => said.cause === cause))
  return [...new Set(told.flatMap(({ families }) => families.map(({ family }) => family)))]
}

const valueRow = z.object({ value: z.string(), unit: z.string(), models: z.int() })

function readShared(
  database: ReadableDatabase,
  asked: {
    readonly modelIds: readonly ModelId[]
    readonly families: readonly string[]
    readonly attribute: string
  },
): string | null {
  const [only, ...others] = database.rows(
    valueRow,
    `SELECT model_attribute.value, unit, count(DISTINCT model_id) AS models
     FROM json_each(?) AS model JOIN model_attribute ON model_id = model.value
       JOIN family USING (family_id) JOIN family_attribute USING (family_id, attribute)
     WHERE attribute = ? AND family IN (SELECT value FROM json_each(?))
     GROUP BY model_attribute.value, unit`,
    JSON.stringify(asked.modelIds),
    asked.attribute,
    JSON.stringify(asked.families),
  )
  if (only === undefined || others.length > 0 || only.models < asked.modelIds.length) return null
  return `${only.value} ${only.unit}`.trim()
}
