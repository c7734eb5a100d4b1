/** A change of the program that no test can tell, and why none could. */
export interface ExplainedSurvivor {
  readonly file: string
  /** The text that is changed, runs of white space as one space. */
  readonly original: string
  readonly becomes: string
  readonly why: string
}

export const explainedSurvivors: readonly ExplainedSurvivor[] = []
