import type { GivenInput, KnownRequestName, Output } from '../../shared-schemas/index.ts'
import { AskProblem } from './ask-problem.ts'
import { askOverLoopback } from './browser-transport.ts'
import { askDesktop, isDesktop } from './desktop-transport.ts'

/** Asks the engine. Gives the answer's value, or throws an `AskProblem`. */
export async function ask<const Name extends KnownRequestName>(
  name: Name,
  input: GivenInput<Name>,
): Promise<Output<Name>> {
  const transport = isDesktop() ? askDesktop : askOverLoopback
  const reply = await transport(name, input)
  if (!reply.ok) throw new AskProblem(reply.problem)
  // The engine answered this very name, and its handler's type is this name's output; TypeScript cannot follow the
  // name through a message.
  return reply.value as Output<Name>
}
