import type { FitAnswer } from '../../shared-schemas/fit-check.ts'
import type { LookupOutcome } from '../../shared-schemas/model-lookup.ts'
import type { ApplianceQuestion } from '../../shared-schemas/plate-reading.ts'
import type { RecordingShop } from '../stock-ledger/record-movement.ts'

export interface Plate {
  readonly model: string
  readonly brand?: string | undefined
}

/** What a plate leaves open. */
export interface PlateModels {
  readonly outcome: LookupOutcome
  readonly open: number
  /** The one model whose number was read as it is printed. */
  readonly settled: {
    readonly modelId: number
    readonly brand: string
    readonly modelNumber: string
    readonly applianceType: string
  } | null
  readonly first: readonly string[]
}

/** What jobs need of the shop, the look-up and the fit check, handed in by `application.ts`. */
export interface JobsShop extends RecordingShop {
  /** Null for a plate of which too little was read, or whose brand is not known. */
  readonly lookUpPlate: (plate: Plate) => PlateModels | null
  readonly judgeFit: (question: ApplianceQuestion & { readonly part: string }) => FitAnswer
  /** Records that a part was fitted and confirmed in a model that is settled. */
  readonly confirmFit: (
    told: Plate & { readonly part: string; readonly job: string; readonly initials: string },
  ) => void
}
