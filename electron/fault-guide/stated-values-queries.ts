import { z } from 'zod'
import type { FaultCheck } from '../../shared-schemas/fault-guide.ts'
import type { ModelId } from '../../shared-schemas/identifiers.ts'
import { readValue } from '../catalogue/measured-values.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import type { GuideOfSymptom } from './guide.ts'
import type { ReadingFacts } from './readings/find-limits.ts'

/** The attributes of `attributes.csv` that readings are judged by, in the unit that each is declared with. */
const heaterPower = 'element power'
const sensorResistance = 'resistance'

/**
 * What the catalogue states of the part that a check measures: the watts of a heater, the ohms of a thermistor at 25 °C.
 * Where several heaters may be in it, the range of their watts; of thermistors only what they all share.
 */
export function readStatedValues(
  database: ReadableDatabase,
  modelIds: readonly ModelId[],
  families: readonly string[],
): Required<Pick<ReadingFacts, 'heaterWatts' | 'ohmsAt25'>> {
  const read = (attribute: string) => listStated(database, { modelIds, families, attribute })
  const [resistance, ...others] = read(sensorResistance)
  return {
    heaterWatts: spanWatts(read(heaterPower)),
    ohmsAt25: resistance === undefined || others.length > 0 ? null : resistance,
  }
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

const valueRow = z.object({ value: z.string(), unit: z.string(), model_id: z.int() })

function spanWatts(stated: readonly string[]): string | null {
  const powers = stated.flatMap(text => {
    const value = readValue(text, 'W')
    return value?.kind === 'numbers' ? value.alternatives : []
  })
  if (powers.length === 0) return null
  const low = Math.min(...powers.map(power => power.low))
  const high = Math.max(...powers.map(power => power.high))
  return low === high ? `${low} W` : `${low}..${high} W`
}

/** Each value that is stated, with its unit, once; none where it is stated of some of the models only. */
function listStated(
  database: ReadableDatabase,
  asked: {
    readonly modelIds: readonly ModelId[]
    readonly families: readonly string[]
    readonly attribute: string
  },
): string[] {
  const rows = database.rows(
    valueRow,
    `SELECT DISTINCT model_attribute.value, unit, model_id
     FROM json_each(?) AS model JOIN model_attribute ON model_id = model.value
       JOIN family USING (family_id) JOIN family_attribute USING (family_id, attribute)
     WHERE attribute = ? AND family IN (SELECT value FROM json_each(?))`,
    JSON.stringify(asked.modelIds),
    asked.attribute,
    JSON.stringify(asked.families),
  )
  const stated = new Set(rows.map(row => row.model_id)).size
  if (stated < asked.modelIds.length) return []
  return [...new Set(rows.map(({ value, unit }) => `${value} ${unit}`.trim()))]
}
