import type { DatabaseHandle } from '../database/handles.ts'

/** What `application.ts` hands to a capability that records or loads something. A capability that only reads asks for less. */
export interface Shop {
  readonly database: DatabaseHandle
  /** A connection of its own for long work. `release` it in a `finally`. */
  readonly openOwnHandle: () => { readonly handle: DatabaseHandle; release(): void }
  readonly databaseFile: string
  readonly now: () => Date
  /** A new UUIDv7. */
  readonly newId: () => string
  readonly device: string
}
