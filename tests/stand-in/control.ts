/** What a test tells the program that runs under the stand-in, and what it hears back. */
export type Order =
  | { readonly order: 'report' }
  | { readonly order: 'start-again' }
  | {
      readonly order: 'ask-from-frame'
      readonly url: string
      readonly isOutermost: boolean
      readonly name: string
    }
  | { readonly order: 'request-permission'; readonly permission: string }
  | { readonly order: 'kill-engine' }
  | { readonly order: 'quit' }

export interface Report {
  readonly refusedNavigations: readonly string[]
  readonly refusedWindows: readonly string[]
  readonly errorBoxes: readonly string[]
  readonly menuRoles: readonly string[]
  readonly timesFocused: number
}

export type Heard =
  | { readonly event: 'window-loaded'; readonly url: string }
  | { readonly event: 'answer'; readonly number: number; readonly value: unknown }
