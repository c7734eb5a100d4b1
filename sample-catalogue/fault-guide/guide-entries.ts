import type { ApplianceType } from '../appliance-types.ts'

/** What the sample guide says of one appliance type. All of it is common practice and has no source. */
export type ApplianceGuide = {
  readonly type: ApplianceType
  readonly symptoms: readonly GuideSymptom[]
  /** In the order in which a person would list them: from outside in, what opens nothing first. */
  readonly checks: readonly GuideCheck[]
}

export type GuideSymptom = {
  readonly symptom: string
  readonly alsoSaid: readonly string[]
  readonly causes: readonly GuideCause[]
}

export type GuideCause = {
  readonly cause: string
  readonly endsIn: 'part' | 'no-part' | 'normal' | 'licensed'
  readonly licensedFor?: Licence
  /** Kinds of part; every family of them may be the one. */
  readonly kinds: readonly string[]
  readonly weight: number
  readonly advice: string
}

export type Licence = 'gas' | 'sealed-refrigerant' | 'microwave-hv' | 'fixed-wiring'

/** Outcomes with how likely each is; the first of the check takes what is left of 1. */
export type Shares = Readonly<Record<string, number>>

export type GuideCheck = {
  readonly check: string
  readonly how: string
  readonly symptoms?: readonly string[]
  readonly measure?: string
  readonly expected?: string
  readonly tolerance?: string
  readonly minutes: number
  readonly tools?: readonly string[]
  readonly hazards?: readonly string[]
  readonly competence: 'anyone' | 'repairer' | 'live-testing'
  /** The first outcome, which takes what is left. */
  readonly usual: string
  /** The other outcomes, in their order, while the cause lies elsewhere. */
  readonly otherwise: Shares
  /** By cause, where it is otherwise; outcomes that are left out share what is left as they do elsewhere. */
  readonly tells: Readonly<Record<string, Shares>>
}

export function symptom(name: string, alsoSaid: string, ...causes: readonly GuideCause[]): GuideSymptom {
  return { symptom: name, alsoSaid: alsoSaid.split('|'), causes }
}

export function part(cause: string, kinds: string, weight: number, advice: string): GuideCause {
  return { cause, endsIn: 'part', kinds: kinds.split('|'), weight, advice }
}

export function mend(cause: string, weight: number, advice: string): GuideCause {
  return { cause, endsIn: 'no-part', kinds: [], weight, advice }
}

/** As it should be, and often taken for a fault; the advice is what to tell the customer. */
export function normal(cause: string, weight: number, advice: string): GuideCause {
  return { cause, endsIn: 'normal', kinds: [], weight, advice }
}

/** Only a person licensed or certified for it does this work: never a step, only who does it. */
export function licensed(cause: string, licensedFor: Licence, weight: number, kinds = ''): GuideCause {
  return {
    cause,
    endsIn: 'licensed',
    licensedFor,
    kinds: kinds === '' ? [] : kinds.split('|'),
    weight,
    advice: '',
  }
}
