import type { HandlersOf } from '../requests/handlers.ts'
import { type LoadingShop, loadFiles } from './load-files.ts'
import { readSummary } from './summary-queries.ts'

export function catalogueHandlers(shop: LoadingShop): HandlersOf<'catalogue'> {
  return {
    'catalogue.read-summary': () => readSummary(shop.database),
    'catalogue.load-files': (input, task) => loadFiles(shop, input, task),
  }
}
