import type { Output } from '../../shared-schemas/index.ts'
import type { HandlersOf } from '../requests/handlers.ts'
import { readFamily } from './family-queries.ts'
import { handleListFamilies, handleListModels } from './handle-lists.ts'
import { removeLayout, renameLayout, saveLayout } from './layouts/keep-layouts.ts'
import { listLayouts } from './layouts/layout-queries.ts'
import { previewFile } from './layouts/preview-file.ts'
import { proposeLayout } from './layouts/propose-layout.ts'
import { listFolder } from './list-folder.ts'
import { type LoadingShop, loadFiles } from './load-files.ts'
import { readLoad } from './load-log/list-row-changes.ts'
import { listLoads } from './load-log/load-log-queries.ts'
import { undoLoad } from './load-log/undo-load.ts'
import { type Stoppable, stoppable } from './loading/stoppable.ts'
import { takeTurns } from './loading/take-turns.ts'
import { readSummary } from './summary-queries.ts'

interface CatalogueShop extends LoadingShop {
  /** Where a person's own files are. */
  readonly homeFolder: string
}

export function catalogueHandlers(shop: CatalogueShop): HandlersOf<'catalogue'> {
  const inTurn = takeTurns()
  const loading = stoppable()
  return {
    'catalogue.read-summary': () => readSummary(shop.database),
    'catalogue.list-families': input => handleListFamilies(shop.database, input),
    'catalogue.read-family': ({ family }) => readFamily(shop.database, family),
    'catalogue.list-models': input => handleListModels(shop.database, input),
    'catalogue.load-files': (input, task) =>
      inTurn(() => loading.run(task, told => loadFiles(shop, input, told))),
    'catalogue.read-loading': () => ({ loading: tellLoading(loading.told()) }),
    'catalogue.list-folder': input => listFolder(input, shop.homeFolder),
    'catalogue.list-loads': () => ({ loads: listLoads(shop.database) }),
    'catalogue.read-load': input => readLoad(shop.database, input),
    'catalogue.undo-load': (input, task) =>
      inTurn(() => loading.run(task, told => undoLoad(shop, input, told))),
    'catalogue.preview-file': input => previewFile(shop.database, input),
    'catalogue.propose-layout': input => proposeLayout(input),
    'catalogue.save-layout': input => inTurn(async () => saveLayout(shop, input)),
    'catalogue.list-layouts': () => ({ layouts: listLayouts(shop.database) }),
    'catalogue.rename-layout': input => inTurn(async () => renameLayout(shop, input)),
    'catalogue.remove-layout': input => inTurn(async () => removeLayout(shop, input)),
    'catalogue.stop-loading': () => ({ wasLoading: loading.stop() }),
  }
}

function tellLoading(told: ReturnType<Stoppable['told']>): Output<'catalogue.read-loading'>['loading'] {
  if (told === null) return null
  const { progress, isStopping } = told
  return { file: progress.what, rowsDone: progress.done, rowsExpected: progress.expected, isStopping }
}
