import type { GivenInput, KnownRequestName, Output } from '../../../shared-schemas/index.ts'
import type { Reply } from '../../../shared-schemas/request.ts'
import type { ExitCode } from './exit-code.ts'

/** One option of a command. `value` names what stands after it; an option without one is a switch. */
export interface Option {
  readonly value?: string
  readonly does: string
  /** May be given again and again. */
  readonly repeats?: boolean
}

/** What was given on the command line, already matched against the command's own table. */
export interface Given {
  readonly words: readonly string[]
  /** The value of an option, or nothing where it was not given. */
  readonly text: (option: string) => string | undefined
  readonly texts: (option: string) => readonly string[]
  readonly has: (option: string) => boolean
}

/** What a command has at hand while it works. */
export interface Desk {
  readonly databaseFile: string
  /** Asks the application in this process. A problem is thrown as a `Refusal`. */
  readonly ask: <Name extends KnownRequestName>(name: Name, input: GivenInput<Name>) => Promise<Output<Name>>
  /** Asks likewise, and gives the reply as it came. */
  readonly reply: (name: KnownRequestName, input: unknown) => Promise<Reply>
  /** A line for people on standard error. */
  readonly tell: (line: string) => void
}

/** What a command answers: for programs, for people, and whether a person must look at it. */
export interface Answer {
  readonly value: unknown
  readonly text: string
  readonly needsPerson: boolean
  /** For a command that goes on after its answer until it is interrupted. */
  readonly stay?: () => Promise<ExitCode>
}

/** `must-exist`: reads a shop that is there. `may-make`: makes one where there is none. `untouched`: works without opening it. */
export type ShopUse = 'must-exist' | 'may-make' | 'untouched'

export interface Command {
  readonly name: string
  /** What stands after the command's name, as in the help. */
  readonly words: string
  readonly leastWords: number
  readonly mostWords: number
  readonly does: string
  readonly options: Readonly<Record<string, Option>>
  readonly shop: ShopUse
  readonly run: (given: Given, desk: Desk) => Promise<Answer>
}
