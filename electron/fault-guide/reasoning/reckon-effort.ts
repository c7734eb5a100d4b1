/** What a check takes, as the guide has it. */
export interface CheckWork {
  /** Above 0. */
  readonly minutes: number
  readonly hazards: readonly string[]
  readonly competence: string
}

export interface Effort {
  /** All together, above 0. */
  readonly minutes: number
  /** What is added to the guide's own minutes, and for what. */
  readonly added: readonly { readonly why: string; readonly minutes: number }[]
}

/**
 * The minutes of a check with what its hazards and the competence that it needs add, so that of two checks that tell as
 * much the safer one comes first. What is added is our choice: about what the precaution takes (isolating, proving dead
 * and testing the earth afterwards; water off and on again), and for work on a live appliance far more than its time.
 */
export function reckonEffort({ minutes, hazards, competence }: CheckWork): Effort {
  const added = [...hazards, competence].flatMap(why => {
    const extra = extraMinutes.get(why) ?? 0
    return extra === 0 ? [] : [{ why, minutes: extra }]
  })
  return { minutes: added.reduce((all, extra) => all + extra.minutes, minutes), added }
}

const extraMinutes: ReadonlyMap<string, number> = new Map([
  ['mains', 3],
  ['stored-charge', 2],
  ['water', 2],
  ['hot', 3],
  ['sharp', 1],
  ['moving', 1],
  ['repairer', 2],
  ['live-testing', 15],
])
