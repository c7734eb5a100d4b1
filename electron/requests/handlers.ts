import type { CheckedInput, KnownRequestName, Output } from '../../shared-schemas/index.ts'

/** How far long work has come, in the unit that `what` names. */
export interface Progress {
  readonly what: string
  readonly done: number
  readonly expected: number
}

/** What a handler may tell and be told while it works. */
export interface Task {
  readonly report: (progress: Progress) => void
}

export type Handler<Name extends KnownRequestName> = (
  input: CheckedInput<Name>,
  task: Task,
) => Output<Name> | Promise<Output<Name>>

/** Every request and what answers it. A capability gives its own part; `application.ts` puts the whole together. */
export type Handlers = { readonly [Name in KnownRequestName]: Handler<Name> }

export type HandlersOf<Prefix extends string> = {
  readonly [Name in Extract<KnownRequestName, `${Prefix}.${string}`>]: Handler<Name>
}
