import type { Output } from '../../../shared-schemas/index.ts'
import { inLongTransaction } from '../../database/handles.ts'
import type { Task } from '../../requests/handlers.ts'
import type { Shop } from '../../requests/shop.ts'
import { raiseCatalogueVersion } from '../catalogue-state-queries.ts'
import { FitmentWriter } from '../fitment-writer.ts'
import { takeBreaths } from '../fitments/take-breaths.ts'
import { undoFitmentsOf } from '../fitments/undo-fitments-of.ts'
import { appendLoadRun } from '../load-run-queries.ts'
import type { RecordOpeningStock } from '../loading/catalogue-file.ts'
import { beginLog } from './begin-log.ts'
import { appendAccount } from './load-log-queries.ts'
import { readUndoable } from './read-undoable.ts'
import { restoreRows } from './restore-rows.ts'
import { forgetFitments } from './undo-fitments.ts'

export interface UndoingShop extends Pick<Shop, 'openOwnHandle' | 'now' | 'device'> {
  readonly recordOpeningStock: RecordOpeningStock
}

export interface Undoing {
  readonly loadRunId: number
  readonly reason: string
  readonly initials: string
}

/**
 * Takes back everything that a load changed: rows and fitments are again as they were before it, and opening stock is
 * booked back. It is a run of its own, so that it too is listed, and dated in the history.
 */
export async function undoLoad(
  { openOwnHandle, now, device, recordOpeningStock }: UndoingShop,
  { loadRunId, reason, initials }: Undoing,
  task: Task,
): Promise<Output<'catalogue.undo-load'>> {
  const { handle, release } = openOwnHandle()
  try {
    return await inLongTransaction(handle, async database => {
      const undone = readUndoable(database, loadRunId)
      const fitments = new FitmentWriter(database)
      const log = beginLog(database)
      await takeBreaths(undoFitmentsOf(database, fitments, loadRunId), () =>
        task.report({ what: 'fitments', done: 0, expected: 0 }),
      )
      forgetFitments(database, undone)
      const { restored, kept } = await restoreRows(database, undone, { recordOpeningStock, task })
      const changes = log.end()
      raiseCatalogueVersion(database)
      const counts = { added: 0, changed: restored, unchanged: 0, rejected: 0 }
      appendLoadRun(database, fitments, { at: now(), path: null, correctionReason: reason, ...counts })
      appendAccount(database, {
        loadRunId: fitments.loadRunId,
        initials,
        device,
        changes,
        undoes: loadRunId,
        layout: null,
      })
      return { loadRunId: fitments.loadRunId, restored, kept }
    })
  } finally {
    release()
  }
}
