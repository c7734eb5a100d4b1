import type { HandlersOf } from '../requests/handlers.ts'
import type { FaultShop } from './fault-shop.ts'
import { readProposals } from './finding-queries.ts'
import { listFittingNotes } from './fitting-note-queries.ts'
import { listSymptoms } from './guide-queries.ts'
import { handleKeepFinding } from './handle-keep-finding.ts'
import { handleWeighFaults } from './handle-weigh-faults.ts'
import { reckonLessons } from './reckon-lessons.ts'

export function faultGuideHandlers(shop: FaultShop): HandlersOf<'fault-guide'> {
  const { database } = shop
  return {
    'fault-guide.list-symptoms': ({ applianceType }) => ({
      symptoms: listSymptoms(database, applianceType ?? null),
    }),
    'fault-guide.weigh-faults': question => handleWeighFaults(shop, question),
    'fault-guide.keep-finding': finding => handleKeepFinding(shop, finding),
    'fault-guide.list-fitting-notes': ({ families }) => listFittingNotes(database, families),
    'fault-guide.read-lessons': ({ applianceType = null }) =>
      reckonLessons(
        listSymptoms(database, applianceType),
        shop.listFinishedJobs(applianceType),
        readProposals(database),
      ),
  }
}
