import { z } from 'zod'
import type { ExplainedSurvivor } from './explained-survivors.ts'

const place = z.object({ line: z.int(), column: z.int() })
const mutantStatus = z.enum([
  'Killed',
  'Timeout',
  'Survived',
  'NoCoverage',
  'Ignored',
  'CompileError',
  'RuntimeError',
  'Pending',
])

/** What is read of the mutation testing report (its schema is published as mutation-testing-report-schema). */
export const mutationReport = z.object({
  files: z.record(
    z.string(),
    z.object({
      source: z.string(),
      mutants: z.array(
        z.object({
          status: mutantStatus,
          replacement: z.string().optional(),
          location: z.object({ start: place, end: place }),
        }),
      ),
    }),
  ),
})
export type MutationReport = z.infer<typeof mutationReport>

export interface Survivor {
  readonly file: string
  readonly line: number
  /** The whole line in which the change begins. */
  readonly text: string
  readonly original: string
  readonly becomes: string
}

export interface FileScore {
  readonly file: string
  readonly killed: number
  readonly timedOut: number
  readonly survived: number
  readonly notCovered: number
  /** Run once when the file is loaded, and left out for speed. */
  readonly leftOut: number
}

export function scoreFiles({ files }: MutationReport): FileScore[] {
  return Object.entries(files).map(([file, { mutants }]) => {
    const count = (wanted: z.infer<typeof mutantStatus>) =>
      mutants.filter(({ status }) => status === wanted).length
    return {
      file,
      killed: count('Killed'),
      timedOut: count('Timeout'),
      survived: count('Survived'),
      notCovered: count('NoCoverage'),
      leftOut: count('Ignored'),
    }
  })
}

/** What was noticed of all that could be, in percent. What survives counts against it, explained or not. */
export function scorePercent(scores: readonly FileScore[]): number {
  const add = (numberOf: (score: FileScore) => number) =>
    scores.reduce((sum, score) => sum + numberOf(score), 0)
  const noticed = add(({ killed, timedOut }) => killed + timedOut)
  return (100 * noticed) / (noticed + add(({ survived, notCovered }) => survived + notCovered))
}

export function listSurvivors({ files }: MutationReport): Survivor[] {
  return Object.entries(files).flatMap(([file, { source, mutants }]) =>
    mutants
      .filter(({ status }) => status === 'Survived' || status === 'NoCoverage')
      .map(({ location: { start, end }, replacement = '' }) => {
        const lines = source.split('\n').slice(start.line - 1, end.line)
        const last = lines.length - 1
        const cut = lines.map((line, at) =>
          line.slice(at === 0 ? start.column - 1 : 0, at === last ? end.column - 1 : line.length),
        )
        return {
          file,
          line: start.line,
          text: squeeze(lines[0] ?? ''),
          original: squeeze(cut.join('\n')),
          becomes: squeeze(replacement),
        }
      }),
  )
}

export function explain(survivor: Survivor, explained: readonly ExplainedSurvivor[]): string | undefined {
  return explained.find(
    ({ file, text, original, becomes }) =>
      file === survivor.file &&
      text === survivor.text &&
      original === survivor.original &&
      becomes.includes(survivor.becomes),
  )?.why
}

/** Runs of white space as one space, so that a change of layout is no change. */
export function squeeze(text: string): string {
  return text.replace(/\s+/g, ' ').trim()
}
