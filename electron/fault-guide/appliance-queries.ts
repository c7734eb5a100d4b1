import { z } from 'zod'
import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { ReadableDatabase } from '../database/handles.ts'

/** What the catalogue states of an appliance. Of several models, only what they all share. */
export interface ApplianceFacts {
  readonly applianceType: string | null
  readonly platform: string | null
  readonly volts: string | null
  readonly watts: string | null
}

const stated = z.string().nullable()
const factsRow = z.object({ appliance_type: stated, platform: stated, volts: stated, watts: stated })

export function readApplianceFacts(database: ReadableDatabase, modelIds: readonly ModelId[]): ApplianceFacts {
  const facts = database.row(
    factsRow,
    `SELECT
       CASE WHEN count(DISTINCT appliance_type) = 1 THEN min(appliance_type) END AS appliance_type,
       CASE WHEN count(DISTINCT ifnull(platform, '')) = 1 THEN min(platform) END AS platform,
       CASE WHEN count(DISTINCT ifnull(volts, '')) = 1 THEN min(volts) END AS volts,
       CASE WHEN count(DISTINCT ifnull(watts, '')) = 1 THEN min(watts) END AS watts
     FROM json_each(?) AS asked JOIN model ON model_id = asked.value`,
    JSON.stringify(modelIds),
  )
  return {
    applianceType: facts?.appliance_type ?? null,
    platform: facts?.platform ?? null,
    volts: facts?.volts ?? null,
    watts: facts?.watts ?? null,
  }
}
