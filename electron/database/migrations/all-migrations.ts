import { firstSchema } from './0001-first-schema.ts'
import { orderCheckOverrides } from './0002-order-check-overrides.ts'
import { fitRecords } from './0003-fit-records.ts'
import { kitsAndPairs } from './0004-kits-and-pairs.ts'
import { compactFitments } from './0005-compact-fitments.ts'
import { modelIndex } from './0006-model-index.ts'
import { supplierLayouts } from './0007-supplier-layouts.ts'
import { loadLog } from './0008-load-log.ts'
import { ledger } from './0009-ledger.ts'
import { stockCounts } from './0010-stock-counts.ts'
import { partCodes } from './0011-part-codes.ts'
import { orderSheets } from './0012-order-sheets.ts'
import { jobsAndReturns } from './0013-jobs-and-returns.ts'
import { reorderSettings } from './0014-reorder-settings.ts'
import { orderBuilding } from './0015-order-building.ts'
import { faultGuide } from './0016-fault-guide.ts'
import { faultFindings } from './0017-fault-findings.ts'
import { layoutOfLoad } from './0018-layout-of-load.ts'

/** In order, frozen once released. A file's place here is its number: the database's `user_version` after it ran. */
export const migrations: readonly string[] = [
  firstSchema,
  orderCheckOverrides,
  fitRecords,
  kitsAndPairs,
  compactFitments,
  modelIndex,
  supplierLayouts,
  loadLog,
  ledger,
  stockCounts,
  partCodes,
  orderSheets,
  jobsAndReturns,
  reorderSettings,
  orderBuilding,
  faultGuide,
  faultFindings,
  layoutOfLoad,
]
