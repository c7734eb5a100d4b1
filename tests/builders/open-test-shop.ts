import { v7 as newId } from 'uuid'
import { openApplication } from '../../electron/application.ts'
import type { Task } from '../../electron/requests/handlers.ts'
import type { GivenInput, KnownRequestName, Output } from '../../shared-schemas/index.ts'
import { wordProblem } from '../../shared-schemas/problem-wording.ts'
import type { Reply } from '../../shared-schemas/request.ts'
import { type CatalogueTexts, withCatalogueFolder } from './catalogue-folder.ts'

export interface TestShop {
  /** The reply as a host gives it, problem or value. */
  ask<Name extends KnownRequestName>(
    name: Name,
    input: GivenInput<Name>,
    task?: Task,
  ): Promise<Reply<Output<Name>>>
  /** The value; throws the wording of a problem, so that a test which expects an answer says why it got none. */
  answer<Name extends KnownRequestName>(
    name: Name,
    input: GivenInput<Name>,
    task?: Task,
  ): Promise<Output<Name>>
  /** Loads more files, every row of them or none. */
  load(files: CatalogueTexts, task?: Task): Promise<Output<'catalogue.load-files'>>
  close(): void
}

/** The day on which every test shop is open, unless a test says otherwise. */
export const testDay = new Date('2026-11-23T09:00:00Z')

/**
 * A whole shop in memory, its catalogue loaded from these texts by the real loader: `{ 'brands.csv': 'brand\nOstrel' }`.
 * A row that is rejected, and any defect, fails the test.
 */
export async function openTestShop(
  files: CatalogueTexts = {},
  {
    now = () => testDay,
    device = 'test-counter',
  }: { readonly now?: () => Date; readonly device?: string } = {},
): Promise<TestShop> {
  const application = openApplication({
    databaseFile: ':memory:',
    sampleFolder: null,
    now,
    newId: () => newId(),
    device,
    logDefect: (_reference, _request, defect) => {
      throw defect
    },
  })
  const shop: TestShop = {
    // The reply to a request carries that request's output; TypeScript cannot follow the name across the union.
    ask: <Name extends KnownRequestName>(name: Name, input: GivenInput<Name>, task?: Task) =>
      application.ask(name, input, task) as Promise<Reply<Output<Name>>>,
    async answer(name, input, task) {
      const reply = await shop.ask(name, input, task)
      if (!reply.ok) throw new Error(wordProblem(reply.problem))
      return reply.value
    },
    load: (more, task) =>
      withCatalogueFolder(more, folder =>
        shop.answer('catalogue.load-files', { path: folder, strict: true }, task),
      ),
    close: () => application.close(),
  }
  if (Object.keys(files).length > 0) await shop.load(files)
  return shop
}
