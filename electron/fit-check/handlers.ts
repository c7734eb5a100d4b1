import { type DatabaseHandle, inOneRead } from '../database/handles.ts'
import type { HandlersOf } from '../requests/handlers.ts'
import { handleAddExclusion } from './handle-add-exclusion.ts'
import { handleJudgeFit } from './handle-judge-fit.ts'
import { handleListFittedModels } from './handle-list-fitted-models.ts'
import { handleListFittingParts, type ReadStock } from './handle-list-fitting-parts.ts'
import { handleReadHistory } from './handle-read-history.ts'
import { handleRecordFit, handleSettleWrongFit, type Stamp } from './handle-record-fit.ts'
import { handleWithdrawCorrection } from './handle-withdraw-correction.ts'
import { openModelsOf } from './look-up-plate.ts'

export interface FitCheckNeeds extends Stamp {
  readonly database: DatabaseHandle
  readonly readStock: ReadStock
}

export function fitCheckHandlers({ database, readStock, ...stamp }: FitCheckNeeds): HandlersOf<'fit-check'> {
  return {
    'fit-check.judge-fit': question =>
      inOneRead(database, () => handleJudgeFit(database, openModelsOf(database, question), question)),
    'fit-check.list-fitting-parts': question =>
      inOneRead(database, () =>
        handleListFittingParts(database, readStock, openModelsOf(database, question), question),
      ),
    'fit-check.list-fitted-models': asked => handleListFittedModels(database, asked),
    'fit-check.record-fit': told => handleRecordFit(database, stamp, openModelsOf(database, told), told),
    'fit-check.settle-wrong-fit': told => handleSettleWrongFit(database, stamp, told),
    'fit-check.add-exclusion': told =>
      handleAddExclusion(database, stamp.now, openModelsOf(database, told), told),
    'fit-check.withdraw-correction': told =>
      handleWithdrawCorrection(database, stamp.now, openModelsOf(database, told), told),
    'fit-check.read-history': question =>
      handleReadHistory(database, openModelsOf(database, question), question),
  }
}
