import type { z } from 'zod'
import { readStartUp } from './application.ts'
import { listFolder, loadFiles, readLoading, readSummary } from './catalogue.ts'
import { listFamilies, listModels, readFamily } from './catalogue-lists.ts'
import { backUpDatabase, verifyDatabase } from './database-care.ts'
import { keepFinding, listSymptoms, readLessons, weighFaults } from './fault-finding.ts'
import { listFittingNotes } from './fault-guide.ts'
import { judgeFit, listFittedModels, listFittingParts } from './fit-check.ts'
import { addExclusion, readHistory, recordFit, settleWrongFit, withdrawCorrection } from './fit-records.ts'
import {
  closeLine,
  expectAgain,
  judgeSubstitute,
  readDeliveries,
  receiveGoods,
  takeBackDelivery,
} from './goods-in.ts'
import {
  bringBack,
  changeJob,
  endVisit,
  listFinishedJobs,
  listJobs,
  markFitted,
  needPart,
  openJob,
  readJob,
  reopenJob,
  takePart,
} from './jobs.ts'
import { listLoads, readLoad, stopLoading, undoLoad } from './load-log.ts'
import { findModels } from './model-lookup.ts'
import { checkOrder, listSuppliers, overrideStop, readOrder } from './order-check.ts'
import {
  cancelSheet,
  changeLines,
  checkSheet,
  draftSheets,
  exportSheets,
  listOnOrder,
  listSheets,
  readBuyer,
  readOrdering,
  readSheet,
  reopenSheet,
  saveBuyer,
  saveOrdering,
  sendSheet,
} from './order-sheets.ts'
import {
  changeSettings,
  explainPart,
  makeProposal,
  preferSupplier,
  readSettings,
  weighOrder,
} from './proposal.ts'
import { playLastYear } from './reorder-back-test.ts'
import {
  changeReorderSettings,
  markOneOff,
  readPart,
  readReorderSettings,
  setShelfLimit,
} from './reorder-settings.ts'
import { decideReturn, listReturns, takeReturn } from './returns.ts'
import {
  attachCode,
  exportLedger,
  findCode,
  importLedger,
  listConflicts,
  listMovements,
  listOnHand,
  listReservations,
  readStockValue,
  recordMovement,
  releaseReservation,
  reservePart,
  reverseMovement,
  setBin,
} from './stock-ledger.ts'
import { listLevels } from './stock-levels.ts'
import {
  listLayouts,
  previewFile,
  proposeLayout,
  removeLayout,
  renameLayout,
  saveLayout,
} from './supplier-layouts.ts'
import {
  beginCount,
  explainVariance,
  listCounts,
  listShortages,
  postCount,
  readCount,
  readTopUp,
  recordReading,
  recordTopUp,
  withdrawReading,
} from './van-counts.ts'

/** Every request there is. A request missing here cannot be asked; one without a handler does not compile. */
export const requests = [
  readStartUp,
  loadFiles,
  readLoading,
  listFolder,
  readSummary,
  listFamilies,
  readFamily,
  listModels,
  listLoads,
  readLoad,
  undoLoad,
  stopLoading,
  previewFile,
  proposeLayout,
  saveLayout,
  listLayouts,
  renameLayout,
  removeLayout,
  findModels,
  judgeFit,
  listFittingParts,
  listFittedModels,
  recordFit,
  settleWrongFit,
  addExclusion,
  withdrawCorrection,
  readHistory,
  recordMovement,
  reverseMovement,
  listMovements,
  listOnHand,
  setBin,
  reservePart,
  releaseReservation,
  listReservations,
  readStockValue,
  exportLedger,
  importLedger,
  listConflicts,
  findCode,
  attachCode,
  beginCount,
  recordReading,
  withdrawReading,
  readCount,
  explainVariance,
  postCount,
  listCounts,
  readTopUp,
  listShortages,
  recordTopUp,
  openJob,
  changeJob,
  readJob,
  listJobs,
  needPart,
  takePart,
  bringBack,
  markFitted,
  endVisit,
  reopenJob,
  listFinishedJobs,
  takeReturn,
  decideReturn,
  listReturns,
  listSymptoms,
  weighFaults,
  keepFinding,
  readLessons,
  listFittingNotes,
  readOrder,
  checkOrder,
  overrideStop,
  listSuppliers,
  draftSheets,
  readSheet,
  listSheets,
  changeLines,
  checkSheet,
  reopenSheet,
  sendSheet,
  cancelSheet,
  exportSheets,
  receiveGoods,
  judgeSubstitute,
  closeLine,
  expectAgain,
  takeBackDelivery,
  readDeliveries,
  listOnOrder,
  listLevels,
  playLastYear,
  makeProposal,
  explainPart,
  weighOrder,
  readSettings,
  changeSettings,
  preferSupplier,
  readBuyer,
  saveBuyer,
  readOrdering,
  saveOrdering,
  readReorderSettings,
  changeReorderSettings,
  readPart,
  setShelfLimit,
  markOneOff,
  verifyDatabase,
  backUpDatabase,
] as const

type AnyRequest = (typeof requests)[number]
export type KnownRequestName = AnyRequest['name']
type RequestNamed<Name extends KnownRequestName> = Extract<AnyRequest, { name: Name }>

/** What a person or a program hands in: defaults may be left out. */
export type GivenInput<Name extends KnownRequestName> = z.input<RequestNamed<Name>['input']>
/** What a handler receives: parsed, defaults filled. */
export type CheckedInput<Name extends KnownRequestName> = z.output<RequestNamed<Name>['input']>
export type Output<Name extends KnownRequestName> = z.output<RequestNamed<Name>['output']>
