import { writeCsv } from '../../shared-schemas/csv-text.ts'
import type { ListedModel } from '../../shared-schemas/model-list.ts'

const columns = ['brand', 'model_number', 'appliance_type', 'conditions']

/** A list of models as CSV (RFC 4180); several conditions of one are separated by `|`. */
export function writeModels(models: readonly ListedModel[]): string {
  const rows = models.map(({ brand, modelNumber, applianceType, conditions }) => [
    brand,
    modelNumber,
    applianceType,
    conditions.join(' | '),
  ])
  return writeCsv([columns, ...rows])
}
