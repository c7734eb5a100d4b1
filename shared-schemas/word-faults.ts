import type { CauseArithmetic, ReadAnswer, Remedy, WeighedFaults } from './fault-finding.ts'
import type { CauseEnd, Competence } from './fault-guide.ts'
import type { LicensedHazard } from './hazards.ts'

/** A share as people say it: `38 %`, and never nothing at all, or certain. */
export function wordShare(share: number): string {
  const percent = Math.round(share * 100)
  if (percent < 1) return 'under 1 %'
  return percent > 99 ? 'over 99 %' : `${percent} %`
}

/** What a share comes to, in one word. The bounds are our choice. */
export function wordLikelihood(share: number): string {
  if (share >= 0.85) return 'very likely'
  if (share >= 0.5) return 'likely'
  if (share >= 0.15) return 'possible'
  return share >= 0.02 ? 'unlikely' : 'all but ruled out'
}

export const endWords: Readonly<Record<CauseEnd, string>> = {
  part: 'a part',
  'no-part': 'no part',
  normal: 'as it should be',
  licensed: 'licensed work',
}

export const competenceWords: Readonly<Record<Competence, string>> = {
  anyone: 'Anyone can do it, over the telephone too.',
  repairer: 'For a repairer, on a machine that is isolated.',
  'live-testing': 'Only for one trained and equipped to measure on live parts.',
}

const licensedNames: Readonly<Record<LicensedHazard, string>> = {
  gas: 'This is gas work',
  'sealed-refrigerant': 'This is work on the sealed refrigeration circuit',
  'microwave-hv': 'This is work on microwave high-voltage parts',
  'fixed-wiring': 'This is work on fixed wiring',
}

/** The only thing that is ever said of licensed work. */
export function wordLicensed(hazard: LicensedHazard | null): string {
  const name = hazard === null ? 'This is licensed work' : licensedNames[hazard]
  return `${name}: only for a person licensed or certified for it where you are; local codes decide.`
}

/** What a remedy is called in a list. */
export function nameRemedy({ endsIn, families, causes, licensedFor }: Remedy): string {
  switch (endsIn) {
    case 'part':
      return [...new Set(families.map(({ name }) => withoutKind(name)))].join(' or ')
    case 'licensed':
      return wordLicensed(licensedFor)
    case 'no-part':
    case 'normal':
      return causes[0] ?? ''
  }
}

/** Families that differ only in kind, which the model decides, are one thing to whoever reads it: `Drain pump, three-screw`. */
function withoutKind(name: string): string {
  return name.split(',')[0] ?? name
}

/** How it stands, in one sentence. */
export function wordEnd({ end, settledOn, remedies, checks }: WeighedFaults): string {
  const settled = remedies.slice(0, settledOn)
  if (end === 'cannot-tell')
    return 'The guide cannot tell: no check is left, and nothing is likely enough to buy on.'
  if (end === 'not-yet') return `${checks.length} ${checks.length === 1 ? 'check' : 'checks'} may still tell.`
  if (settled.every(({ endsIn }) => endsIn === 'normal')) return 'No part needed: it works as it should.'
  if (settled.every(({ endsIn }) => endsIn === 'no-part')) return 'No part needed.'
  if (settled.every(({ endsIn }) => endsIn === 'licensed')) return 'Stop here.'
  return 'Worth ordering, once it is tested.'
}

/** What was answered, in words. */
export function wordAnswer({ outcome, measured, left }: ReadAnswer): string {
  if (left !== null) return left === 'skipped' ? 'skipped' : 'could not tell'
  return measured === null ? (outcome ?? '') : `${measured.typed}: ${outcome}`
}

const figure = (share: number) => (share >= 0.001 ? share.toFixed(3) : share.toExponential(1))

/** How a cause came by its figure, line by line, as anybody could reckon it again. */
export function wordArithmetic(
  { byGuide, jobsOfType, byType, jobsOfPlatform, prior, factors, product, total }: CauseArithmetic,
  probability: number,
): string[] {
  return [
    `The guide gives it ${figure(byGuide)} of all causes of this symptom.`,
    `${countJobs(jobsOfType)} of this kind of appliance speak for it: ${figure(byType)}. Jobs that tell only their part leave causes without one as they were.`,
    `${countJobs(jobsOfPlatform)} of this platform speak for it: ${figure(prior)} to begin with.`,
    ...factors.map(
      ({ check, outcome, likelihood }) =>
        `${check}, ${outcome}: × ${figure(likelihood)} if this is the cause.`,
    ),
    `${figure(product)} of ${figure(total)} for all causes together: ${figure(probability)}.`,
  ]
}

function countJobs(jobs: number): string {
  const told = Number.isInteger(jobs) ? `${jobs}` : jobs.toFixed(1)
  return `${told} finished ${jobs === 1 ? 'job' : 'jobs'}`
}

export function wordMinutes(minutes: number): string {
  return `About ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}.`
}
