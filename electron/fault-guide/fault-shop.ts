import type { ModelId } from '../../shared-schemas/identifiers.ts'
import type { ApplianceQuestion } from '../../shared-schemas/plate-reading.ts'
import type { Shop } from '../requests/shop.ts'

/** A finished job of the shop, as far as it tells what was wrong. */
export interface ShopJob {
  readonly job: string
  readonly platform: string | null
  readonly applianceType: string | null
  readonly symptom: string
  /** The guide's cause, where whoever finished it named one. */
  readonly causeKey: string | null
  /** What was wrong in words, which may be the guide's. */
  readonly cause: string | null
  readonly familiesNeeded: readonly string[]
  readonly familiesFitted: readonly string[]
  readonly finishedFirstVisit: boolean
}

/** Told by the jobs: those that ended with the appliance working, of one kind of appliance or of all. */
export type ListFinishedJobs = (applianceType: string | null) => readonly ShopJob[]

/** Told by the look-up: every model that a plate leaves open. */
export type FindModels = (appliance: ApplianceQuestion) => readonly ModelId[]

/** What the fault guide is handed. */
export interface FaultShop extends Pick<Shop, 'database' | 'now' | 'newId' | 'device'> {
  readonly findModels: FindModels
  readonly listFinishedJobs: ListFinishedJobs
}
