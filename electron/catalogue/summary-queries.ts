import { z } from 'zod'
import type { Output } from '../../shared-schemas/index.ts'
import type { ReadableDatabase } from '../database/handles.ts'
import { readCatalogueVersion } from './catalogue-state-queries.ts'
import { countFitments } from './fitments/fitment-queries.ts'

const countsRow = z.object({ models: z.int(), families: z.int(), parts: z.int() })
const nameRow = z.object({ name: z.string() })
const locationRow = z.object({
  location: z.string(),
  kind: z.enum(['shop', 'van', 'quarantine']),
  name: z.string(),
})

/** How much the catalogue holds. */
export function readSummary(database: ReadableDatabase): Output<'catalogue.read-summary'> {
  const counts = database.row(
    countsRow,
    `SELECT (SELECT count(*) FROM model) AS models, (SELECT count(*) FROM family) AS families,
       (SELECT count(*) FROM part) AS parts`,
  )
  if (counts === undefined) throw new Error('a SELECT of counts gives one row')
  const brands = database.rows(nameRow, 'SELECT name FROM brand ORDER BY name_key')
  const types = database.rows(
    nameRow,
    "SELECT DISTINCT appliance_type AS name FROM model WHERE appliance_type <> '' ORDER BY appliance_type",
  )
  return {
    catalogueVersion: readCatalogueVersion(database),
    brands: brands.map(({ name }) => name),
    applianceTypes: types.map(({ name }) => name),
    ...counts,
    fitments: countFitments(database),
    locations: database.rows(locationRow, 'SELECT location, kind, name FROM location ORDER BY location_id'),
  }
}
