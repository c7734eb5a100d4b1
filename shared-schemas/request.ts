import type { z } from 'zod'
import type { Problem } from './problem.ts'

/** `capability.verb-noun`, for example `model-lookup.find-models`. */
export type RequestName = `${string}.${string}`

/** What one request is called, what it must be given and what it answers. */
export interface RequestContract<
  Name extends RequestName = RequestName,
  Input extends z.ZodType = z.ZodType,
  Output extends z.ZodType = z.ZodType,
> {
  readonly name: Name
  readonly input: Input
  readonly output: Output
}

/** Declares a request once, for the engine that answers it and for every place that asks it. */
export function defineRequest<
  const Name extends RequestName,
  Input extends z.ZodType,
  Output extends z.ZodType,
>(contract: RequestContract<Name, Input, Output>): RequestContract<Name, Input, Output> {
  return contract
}

/** What every door answers with: a value, or a problem that carries a code and the facts. */
export type Reply<Value = unknown> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: Problem }
