import type { FitAnswer, FittingFamily } from '../../shared-schemas/fit-check.ts'
import type { FoundModels } from '../../shared-schemas/model-lookup.ts'
import { type CounterEnquiry, readingsOf } from './counter-enquiry.ts'
import type { Slip } from './slip-text.ts'

interface AnswersOnScreen {
  readonly shop: string
  readonly enquiry: CounterEnquiry
  readonly found: FoundModels | undefined
  readonly openModels: number
  readonly openFamily: FittingFamily | undefined
  readonly part: FitAnswer | undefined
}

/** The slip for the part in the hand, else for the best part of the family that is open; null while neither is answered. */
export function slipOfAnswers(answers: AnswersOnScreen): Slip | null {
  const about = answers.part === undefined ? aboutFamily(answers.openFamily) : aboutPart(answers.part)
  return about && { shop: answers.shop, appliance: applianceOf(answers), ...about }
}

type About = Omit<Slip, 'shop' | 'appliance'>

function aboutPart(answer: FitAnswer): About {
  const { verdict, part, quantityPerAppliance, reasons, ask, alsoNeeds, cautions } = answer
  return { verdict, part, quantityPerAppliance, reasons, ask, alsoNeeds, cautions }
}

function aboutFamily(family: FittingFamily | undefined): About | null {
  const best = family?.parts[0]
  if (family === undefined || best === undefined) return null
  const { partNumber, supersededBy, description, verdict, reasons, ask, alsoNeeds } = best
  return {
    verdict,
    part: { typed: partNumber, partNumber, current: supersededBy ?? partNumber, description },
    quantityPerAppliance: family.quantityPerAppliance,
    reasons,
    ask,
    alsoNeeds,
    cautions: [...best.cautions, ...family.cautions],
  }
}

function applianceOf({ enquiry, found, openModels }: AnswersOnScreen): Slip['appliance'] {
  const { text, taken } = enquiry
  const model = taken ?? (found?.outcome === 'exact' ? found.candidates[0] : undefined) ?? null
  return { typed: text.trim(), readings: readingsOf(enquiry), model, openModels, isTaken: taken !== null }
}
