import type { ModelId, PartId } from '../../shared-schemas/identifiers.ts'

/** What somebody recorded of a part in a model: that it was fitted and confirmed, or came back because it did not fit. */
export interface FitRecord {
  readonly recordId: string
  readonly kind: 'confirmed' | 'wrong-fit'
  readonly modelId: ModelId
  readonly brand: string
  readonly modelNumber: string
  readonly partId: PartId
  readonly partNumber: string
  readonly job: string | null
  /** Always there for a wrong fit. */
  readonly reason: string | null
  readonly initials: string
  /** When it was recorded, in ISO 8601. */
  readonly at: string
  readonly settled: Settled | null
}

/** How a wrong fit was found out about, by whom and when. */
export interface Settled {
  readonly how: string
  readonly initials: string
  readonly at: string
}

/** The day of a moment in ISO 8601, as it is named in sentences and sources. */
export function dayOf(at: string): string {
  return at.slice(0, 10)
}

/** Where a record rests: on who made it, and when. */
export function sourceOfRecord({ initials, at }: Pick<FitRecord, 'initials' | 'at'>): string {
  return `shop record, ${initials} ${dayOf(at)}`
}
