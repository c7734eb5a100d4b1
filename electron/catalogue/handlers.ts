import type { HandlersOf } from '../requests/handlers.ts'
import { type LoadingShop, loadFiles } from './load-files.ts'
import { takeTurns } from './loading/take-turns.ts'
import { readSummary } from './summary-queries.ts'

export function catalogueHandlers(shop: LoadingShop): HandlersOf<'catalogue'> {
  const inTurn = takeTurns()
  return {
    'catalogue.read-summary': () => readSummary(shop.database),
    'catalogue.load-files': (input, task) => inTurn(() => loadFiles(shop, input, task)),
  }
}
