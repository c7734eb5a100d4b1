import type { OfferedMove, OrderLine } from '../../shared-schemas/order-check.ts'
import type { Problem } from '../../shared-schemas/problem.ts'
import type { Part } from '../catalogue/part-queries.ts'
import type { FitRecord } from '../fit-check/fit-record.ts'
import type { JudgedPart } from '../fit-check/judge-many.ts'
import type { PartDossier } from '../fit-check/part-dossier.ts'
import type { Together } from '../fit-check/replace-together.ts'
import type { OpenModels } from '../model-lookup/open-models.ts'
import type { CurrentNumber } from './find-current-number.ts'
import type { ReadQuantity } from './read-quantity.ts'

/** What was read of the appliance that a line is for. */
export type Appliance =
  | { readonly kind: 'none' }
  /** Something of it is given, and no model number. */
  | { readonly kind: 'incomplete' }
  | { readonly kind: 'unreadable'; readonly why: string }
  | { readonly kind: 'refused'; readonly problem: Problem }
  | { readonly kind: 'read'; readonly open: OpenModels }

/** What a supplier asks for a part: from a quantity on, in packs, and at least so many. */
export interface SupplierOffer {
  readonly supplier: string
  readonly price: string
  readonly currency: string
  readonly fromQuantity: number
  readonly pack: number
  readonly minimum: number
}

export interface OpenOrderLine {
  readonly order: string
  readonly supplier: string
  readonly quantity: number
}

export interface PaidPrice {
  readonly price: string
  readonly currency: string
}

/** What goes in together with a line's part, and where pieces of it are. */
export interface CompanionFacts extends Together {
  readonly moves: readonly OfferedMove[]
}

/** All that is known of one line of the order when the rules are asked. */
export interface LineFacts {
  readonly given: OrderLine
  readonly quantity: ReadQuantity
  readonly part: Part | undefined
  /** Numbers to compare with, where the catalogue has no such part. */
  readonly nearest: readonly string[]
  readonly dossier: PartDossier | undefined
  readonly appliance: Appliance
  /** Lines with the same name are for the same appliance; all stock lines share one. */
  readonly applianceName: string
  /** The fit verdict, where there is an appliance and a part. */
  readonly judged: JudgedPart | undefined
  /** What is supplied today for the part, where there is one. */
  readonly current: CurrentNumber | undefined
  /** What goes in together with it, where it fits its appliance. */
  readonly companions: readonly CompanionFacts[]
  /** What was recorded of returns and confirmed fits, for all parts of the order. */
  readonly records: readonly FitRecord[]
  readonly offers: readonly SupplierOffer[]
  /** Pieces of the part, of one that always stands for it, or of the current one. */
  readonly moves: readonly OfferedMove[]
  readonly openOrders: readonly OpenOrderLine[]
  readonly lastPaid: PaidPrice | undefined
}

/** How many pieces, where that is readable. */
export function piecesOf({ quantity }: Pick<LineFacts, 'quantity'>): number | undefined {
  return quantity.kind === 'unreadable' ? undefined : quantity.pieces
}
