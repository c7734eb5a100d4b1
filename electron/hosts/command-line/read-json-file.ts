import type { z } from 'zod'
import { Refusal } from '../../requests/refusal.ts'
import { readText } from './read-questions.ts'

/** What a JSON file says, as its schema has it; anything else is refused with the first thing that is wrong. */
export function readJsonFile<Schema extends z.ZodType>(schema: Schema, file: string): z.output<Schema> {
  const read = schema.safeParse(parseJson(file))
  if (read.success) return read.data
  const [issue] = read.error.issues
  throw new Refusal({
    code: 'file-unreadable',
    file,
    why: `${issue?.path.join('.') ?? ''} ${issue?.message ?? ''}`.trim(),
  })
}

function parseJson(file: string): unknown {
  try {
    return JSON.parse(readText(file))
  } catch (thrown) {
    if (thrown instanceof SyntaxError)
      throw new Refusal({ code: 'file-unreadable', file, why: 'it is not JSON' })
    throw thrown
  }
}
