import type { Reply } from '../../shared-schemas/request.ts'

/** What a host tells the engine when it starts it. Plain text and null, since it may travel as a command-line argument. */
export interface EngineSettings {
  readonly databaseFile: string
  /** Loaded into a shop that has never loaded anything; null loads nothing. */
  readonly sampleFolder: string | null
  /** Which machine movements are recorded on. */
  readonly device: string
}

export interface EngineQuestion {
  readonly id: number
  readonly name: string
  readonly input: unknown
}

export interface EngineAnswer {
  readonly id: number
  readonly reply: Reply
}

/** Bids the engine close its database and end. */
export interface EngineClosing {
  readonly close: true
}
