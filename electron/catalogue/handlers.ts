import type { HandlersOf } from '../requests/handlers.ts'
import { type LoadingShop, loadFiles } from './load-files.ts'
import { readLoad } from './load-log/list-row-changes.ts'
import { listLoads } from './load-log/load-log-queries.ts'
import { undoLoad } from './load-log/undo-load.ts'
import { stoppable } from './loading/stoppable.ts'
import { takeTurns } from './loading/take-turns.ts'
import { readSummary } from './summary-queries.ts'

export function catalogueHandlers(shop: LoadingShop): HandlersOf<'catalogue'> {
  const inTurn = takeTurns()
  const loading = stoppable()
  return {
    'catalogue.read-summary': () => readSummary(shop.database),
    'catalogue.load-files': (input, task) =>
      inTurn(() => loading.run(task, told => loadFiles(shop, input, told))),
    'catalogue.list-loads': () => ({ loads: listLoads(shop.database) }),
    'catalogue.read-load': input => readLoad(shop.database, input),
    'catalogue.undo-load': (input, task) =>
      inTurn(() => loading.run(task, told => undoLoad(shop, input, told))),
    'catalogue.stop-loading': () => ({ wasLoading: loading.stop() }),
  }
}
