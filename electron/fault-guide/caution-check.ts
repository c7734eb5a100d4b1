import type { Competence } from '../../shared-schemas/fault-guide.ts'
import type { Caution } from '../../shared-schemas/fit-check.ts'
import { hazardWords } from '../../shared-schemas/hazard-words.ts'

/** What is said before a check, in the order in which it is done: whose work it is, then each hazard. Never dismissed. */
export function cautionCheck({
  hazards,
  competence,
}: {
  readonly hazards: readonly string[]
  readonly competence: Competence
}): Caution[] {
  const isLive = competence === 'live-testing'
  const ofHazards = Object.entries(hazardWords)
    // A machine cannot be proved dead and measured live; the words for live work say when it is isolated.
    .filter(([hazard]) => hazards.includes(hazard) && !(isLive && hazard === 'mains'))
    .map(([hazard, text]) => ({ code: hazard, text }))
  return isLive ? [liveTesting, ...ofHazards] : ofHazards
}

const liveTesting: Caution = {
  code: 'live-testing',
  text: 'Leave this to a person trained and equipped to measure on live parts; local codes decide. Isolate and prove dead before the leads go on and before they come off. Restore earth continuity and test it before use.',
}
