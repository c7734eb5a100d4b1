import type { StartUp } from '../shared-schemas/application.ts'
import type { Reply } from '../shared-schemas/request.ts'
import { readCatalogueVersion } from './catalogue/catalogue-state-queries.ts'
import { checkFitments } from './catalogue/fitments/check-fitments.ts'
import { catalogueHandlers } from './catalogue/handlers.ts'
import { databaseHandlers } from './database/handlers.ts'
import type { DatabaseHandle } from './database/handles.ts'
import { inMemory, openDatabase } from './database/open-database.ts'
import { faultGuideHandlers } from './fault-guide/handlers.ts'
import { joinedFitTables } from './fit-check/fit-record-queries.ts'
import { handleJudgeFit } from './fit-check/handle-judge-fit.ts'
import { handleRecordFit } from './fit-check/handle-record-fit.ts'
import { fitCheckHandlers } from './fit-check/handlers.ts'
import { lookUpPlate, modelIdsOf, openModelsOf } from './fit-check/look-up-plate.ts'
import { readAwaited } from './jobs/awaited-parts-queries.ts'
import { listFinishedJobs } from './jobs/finished-jobs-queries.ts'
import { jobsHandlers } from './jobs/handlers.ts'
import { listJobConflicts } from './jobs/job-conflict-queries.ts'
import { joinedJobTables, writeJoinedJobs } from './jobs/joined-tables.ts'
import { modelLookupHandlers } from './model-lookup/handlers.ts'
import { type IndexKeeper, type LayingOut, openIndexKeeper } from './model-lookup/index-keeper.ts'
import { keepIndex } from './model-lookup/keep-index.ts'
import { checkOrder, type DraftOrder } from './order-check/check-order.ts'
import type { ToldOfParts } from './order-check/gather-line-facts.ts'
import { orderCheckHandlers } from './order-check/handlers.ts'
import { readLeadTimes } from './order-sheets/goods-in/delivery-queries.ts'
import { goodsInHandlers } from './order-sheets/goods-in/handlers.ts'
import { orderSheetsHandlers } from './order-sheets/handlers.ts'
import { readNotSent, readOnOrder, readOpenOrders } from './order-sheets/on-order-queries.ts'
import { reorderHandlers } from './reorder/handlers.ts'
import { addPieces, type PlanningShop } from './reorder/plan-stock.ts'
import { proposalHandlers } from './reorder/proposal/handlers.ts'
import { type DefectLog, dispatch } from './requests/dispatch.ts'
import type { Handlers, Task } from './requests/handlers.ts'
import { Refusal } from './requests/refusal.ts'
import { stockLedgerHandlers } from './stock-ledger/handlers.ts'
import { ownJoinedTables } from './stock-ledger/joined-tables.ts'
import { readLastPaid } from './stock-ledger/last-paid-queries.ts'
import { recordOpeningStock } from './stock-ledger/record-opening-stock.ts'
import { returnsHandlers } from './stock-ledger/returns/handlers.ts'
import { readUsableStock } from './stock-ledger/usable-stock-queries.ts'
import { listCountConflicts } from './van-counts/count-conflict-queries.ts'
import { readFamilyShortages } from './van-counts/family-shortage-queries.ts'
import { vanCountsHandlers } from './van-counts/handlers.ts'
import { joinedCountTables } from './van-counts/joined-tables.ts'

/** What the outside world hands in, so that nothing deep inside fetches it. */
export interface Surroundings {
  /** The shop's SQLite file, or `:memory:`. */
  readonly databaseFile: string
  /** A folder of catalogue files for a shop that has never loaded any; null loads nothing. */
  readonly sampleFolder: string | null
  readonly now: () => Date
  /** A new UUIDv7. */
  readonly newId: () => string
  /** Which machine movements are recorded on. */
  readonly device: string
  readonly logDefect: DefectLog
  /** Where a person looks for files first. Without it, where the program was started. */
  readonly homeFolder?: string
  /** Has `keepModelIndex` done for this file elsewhere. Without it, a question lays a large catalogue out itself. */
  readonly layOutIndex?: (databaseFile: string) => LayingOut
}

export interface Application {
  /** Answers any request. Waits until the shop is open; replies with the problem when it cannot be opened. */
  ask(name: string, input: unknown, task?: Task): Promise<Reply>
  /** Settles when the shop is open or has failed to open; never rejects. */
  readonly opened: Promise<StartUp>
  close(): void
}

/** Composition root: opens the database and gathers every capability's handlers. */
export function openApplication(surroundings: Surroundings): Application {
  let startUp: StartUp = { state: 'opening' }
  let shop: OpenShop | undefined

  const open = async (): Promise<StartUp> => {
    try {
      shop = openShop(surroundings)
      const sampleShop = await loadSampleOnce(shop, surroundings, step => {
        startUp = step
      })
      startUp = { state: 'ready', databaseFile: surroundings.databaseFile, sampleShop }
    } catch (thrown) {
      startUp = { state: 'failed', problem: asProblem(thrown, surroundings) }
    }
    return startUp
  }
  const opened = open()

  return {
    opened,
    async ask(name, input, task) {
      if (name === 'application.read-start-up') return { ok: true, value: startUp }
      const state = await opened
      if (state.state === 'failed') return { ok: false, problem: state.problem }
      if (shop === undefined) throw new Error('the shop is open once start-up has not failed')
      if (asksAboutModels.test(name)) await shop.indexKeeper?.ready()
      const reply = await dispatch(
        { ...surroundings, handlers: shop.handlers, newReference: newReference(surroundings) },
        name,
        input,
        task,
      )
      if (reply.ok && mayBringModels.test(name)) await shop.indexKeeper?.ready()
      return reply
    },
    close() {
      shop?.indexKeeper?.close()
      shop?.database.close()
    },
  }
}

/** Requests that look models up, which wait for a large catalogue's index without keeping others waiting. */
const asksAboutModels =
  /^(?:model-lookup|fit-check|order-check|order-sheets|goods-in|proposal|jobs|returns|fault-guide)\./
/** A load is over when its models can be found at once. */
const mayBringModels = /^catalogue\.(?:load|undo)/

/** Lays the look-up index of a shop's catalogue out and keeps it in the shop's file. */
export function keepModelIndex(databaseFile: string): void {
  const database = openDatabase(databaseFile)
  try {
    keepIndex(database)
  } finally {
    database.close()
  }
}

interface OpenShop {
  readonly database: DatabaseHandle
  readonly indexKeeper: IndexKeeper | undefined
  readonly handlers: Handlers
}

function openShop(surroundings: Surroundings): OpenShop {
  const { databaseFile, layOutIndex } = surroundings
  const database = openDatabase(databaseFile)
  const shop = { ...surroundings, database, openOwnHandle: () => ownHandle(database, databaseFile) }
  const told: ToldOfParts = {
    readUsableStock: partIds => readUsableStock(database, partIds),
    readLastPaid: partIds => readLastPaid(database, partIds),
    readOpenOrders: partIds => readOpenOrders(database, partIds),
  }
  const orderSheets = {
    ...shop,
    checkOrder: (order: DraftOrder) => checkOrder(database, told, order).checked,
  }
  const planning: PlanningShop = {
    ...shop,
    readOnOrder: () => readOnOrder(database),
    readAwaited: () => addPieces(readAwaited(database), readFamilyShortages(database)),
    readLeadTimes: asOf => readLeadTimes(database, asOf),
  }
  return {
    database,
    indexKeeper:
      layOutIndex && openIndexKeeper({ database, startLayingOut: () => layOutIndex(databaseFile) }),
    handlers: {
      'application.read-start-up': () => ({ state: 'ready', databaseFile, sampleShop: false }),
      ...catalogueHandlers({
        ...shop,
        homeFolder: surroundings.homeFolder ?? '.',
        recordOpeningStock: (writable, opening) => recordOpeningStock(writable, shop, opening),
      }),
      ...databaseHandlers({ ...shop, checkFitments: () => checkFitments(database) }),
      ...faultGuideHandlers({
        ...shop,
        findModels: plate => modelIdsOf(database, plate),
        listFinishedJobs: applianceType => listFinishedJobs(database, applianceType),
      }),
      ...fitCheckHandlers({ ...shop, readStock: partIds => readUsableStock(database, partIds) }),
      ...jobsHandlers({
        ...shop,
        lookUpPlate: plate => lookUpPlate(database, plate),
        judgeFit: question => handleJudgeFit(database, openModelsOf(database, question), question),
        confirmFit: told =>
          handleRecordFit(database, shop, openModelsOf(database, told), { kind: 'confirmed', ...told }),
      }),
      ...modelLookupHandlers(shop),
      ...orderCheckHandlers({ ...shop, ...told }),
      ...orderSheetsHandlers(orderSheets),
      ...goodsInHandlers(orderSheets),
      ...returnsHandlers({
        ...shop,
        recordWrongFit: told =>
          handleRecordFit(database, shop, openModelsOf(database, told), { kind: 'wrong-fit', ...told })
            .recordId,
      }),
      ...reorderHandlers({ ...planning, ...shop }),
      ...proposalHandlers({
        ...planning,
        database,
        readOnSheets: () => readNotSent(database),
        checkOrder: orderSheets.checkOrder,
      }),
      ...stockLedgerHandlers({
        ...shop,
        joined: {
          tables: [...ownJoinedTables, ...joinedFitTables, ...joinedCountTables, ...joinedJobTables],
          settle: (writable, lines) =>
            writeJoinedJobs(writable, { lookUpPlate: plate => lookUpPlate(database, plate) }, lines),
          listConflicts: readable => [...listCountConflicts(readable), ...listJobConflicts(readable)],
        },
      }),
      ...vanCountsHandlers(shop),
    },
  }
}

/** A second connection for long work, so that questions are answered meanwhile. A database in memory has only the one. */
function ownHandle(
  database: DatabaseHandle,
  file: string,
): { readonly handle: DatabaseHandle; release(): void } {
  if (file === inMemory) return { handle: database, release: () => {} }
  const handle = openDatabase(file)
  return { handle, release: () => handle.close() }
}

/** Loads the sample into a shop that has never loaded anything. Says whether it did. */
async function loadSampleOnce(
  { database, handlers }: OpenShop,
  { sampleFolder }: Surroundings,
  report: (step: StartUp) => void,
): Promise<boolean> {
  if (sampleFolder === null || readCatalogueVersion(database) > 0) return false
  report({ state: 'loading-sample', file: '', rowsDone: 0, rowsExpected: 0 })
  await handlers['catalogue.load-files'](
    { path: sampleFolder, dryRun: false, strict: true, edition: false, showChanges: 0 },
    {
      report: ({ what, done, expected }) =>
        report({ state: 'loading-sample', file: what, rowsDone: done, rowsExpected: expected }),
    },
  )
  return true
}

function asProblem(thrown: unknown, surroundings: Surroundings) {
  if (thrown instanceof Refusal) return thrown.problem
  const reference = newReference(surroundings)()
  surroundings.logDefect(reference, 'opening the shop', thrown)
  return { code: 'unexpected' as const, reference }
}

/** Short enough to read out on the telephone: the random tail of a new id. */
function newReference({ newId }: Surroundings): () => string {
  return () => newId().slice(-8)
}
