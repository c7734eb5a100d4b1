import { z } from 'zod'
import { familyCode, modelId } from './identifiers.ts'
import { modelPage, modelsAsked } from './model-list.ts'
import { lookupOutcome } from './model-lookup.ts'
import { applianceQuestion } from './plate-reading.ts'
import { defineRequest } from './request.ts'

export const verdict = z.enum(['fits', 'fits-with-changes', 'ask', 'does-not-fit', 'no-record'])
export type Verdict = z.infer<typeof verdict>

/** One step of the reasoning, with where it rests. */
export const reason = z.object({ code: z.string(), text: z.string(), source: z.string().nullable() })
export type Reason = z.infer<typeof reason>

/** A reading that is missing and would decide: which one, and what each value of it would mean. */
export const askedReading = z.object({
  /** `model-number`, `brand`, `made`, `serial`, `volts`, `hertz`, `watts`, or the name of a family's attribute. */
  reading: z.string(),
  /** For `model-number`: positions that count from 1 over the plate key. */
  positions: z.array(z.int()).optional(),
  means: z.array(z.object({ value: z.string(), verdict })).optional(),
  text: z.string(),
})
export type AskedReading = z.infer<typeof askedReading>

/** How the asked readings were chosen: `fewest`, since every smaller set was tried and fails; or `greedy`, where a smaller may do. */
export const askChosen = z.enum(['fewest', 'greedy'])
export type AskChosen = z.infer<typeof askChosen>

export const caution = z.object({
  code: z.string(),
  text: z.string(),
  /** For `wrong-fit-returned`: the record that waits to be settled. */
  recordId: z.string().optional(),
})
export type Caution = z.infer<typeof caution>

/** What the catalogue says of other models of the platform, where it does not decide this one. It never changes a verdict. */
export const hint = z.object({
  text: z.string(),
  /** So many of the other models take the part for certain. */
  models: z.int(),
  of: z.int(),
})
export type Hint = z.infer<typeof hint>

export const partInQuestion = z.object({
  typed: z.string(),
  /** The part's number in the catalogue; null when the catalogue has no such part. */
  partNumber: z.string().nullable(),
  /** What is supplied today for the number typed. */
  current: z.string().nullable(),
  /** From the number typed to the current one, both included. */
  chain: z.array(z.string()),
  family: z.string().nullable(),
  description: z.string().nullable(),
})

/** How the models that the text leaves open divide. `undecided` waits for a reading. */
export const openModels = z.object({ open: z.int(), yes: z.int(), no: z.int(), undecided: z.int() })

/** A condition of a statement, with the reading it was held against. `holds` is null where that leaves it open. */
export const checkedCondition = z.object({
  reading: z.enum(['made', 'serial']),
  wants: z.string(),
  read: z.string().nullable(),
  from: z.enum(['plate', 'date-code', 'catalogue']).nullable(),
  holds: z.boolean().nullable(),
})
export type CheckedCondition = z.infer<typeof checkedCondition>

/** An attribute of the part beside that of the appliance. */
export const sideBySide = z.object({
  attribute: z.string(),
  unit: z.string(),
  part: z.string(),
  appliance: z.string().nullable(),
  from: z.enum(['plate', 'measured', 'catalogue']).nullable(),
  agreement: z.enum(['agrees', 'disagrees', 'unknown']),
})
export type SideBySide = z.infer<typeof sideBySide>

/** The reasoning of a verdict as a chain of steps: number, statements with their conditions, attributes. */
export const why = z.object({
  /** Each replacement on the way from the number typed to the current one. */
  replaced: z.array(z.object({ by: z.string(), alsoNeeds: z.array(z.string()) })),
  statements: z.array(
    z.object({
      says: z.enum(['includes', 'excludes']),
      subject: z.string(),
      position: z.string().nullable(),
      source: z.string(),
      /** Of how many of the open models it is said. */
      models: z.int(),
      conditions: z.array(checkedCondition),
    }),
  ),
  attributes: z.array(sideBySide),
  /** What goes in together with the part, and what provides it; `in-count`: so many go into one appliance anyhow. */
  together: z.array(
    z.object({
      part: z.string(),
      quantity: z.int(),
      from: z.enum(['besides', 'needed-anyhow', 'in-kit', 'in-count']),
      why: z.string().nullable(),
    }),
  ),
  /** What comes in the part supplied, where that is a kit. */
  contents: z.array(z.object({ part: z.string(), quantity: z.int() })),
  /** The kits in which the part supplied comes too. */
  kits: z.array(z.string()),
})
export type Why = z.infer<typeof why>

export const fitAnswer = z.object({
  verdict,
  part: partInQuestion,
  models: openModels,
  /** The one model the answer is about, where the text leaves only one open. */
  model: z
    .object({ modelId, brand: z.string(), modelNumber: z.string(), applianceType: z.string() })
    .nullable(),
  quantityPerAppliance: z.int().nullable(),
  reasons: z.array(reason),
  /** In the order in which reading one by one decides soonest. */
  ask: z.array(askedReading),
  /** Null where nothing is asked, or only that the model number be confirmed. */
  askChosen: askChosen.nullable(),
  cautions: z.array(caution),
  /** Other part numbers of the family that fit every open model. */
  insteadTry: z.array(z.string()),
  /** Parts to be bought besides, where the verdict is `fits-with-changes`. */
  alsoNeeds: z.array(z.string()),
  /** Shown as hints and nothing more; only where the verdict is `no-record` or `ask`. */
  hints: z.array(hint),
  /** The chain behind the verdict, to be opened or printed; null where part or model is not known. */
  why: why.nullable(),
})
export type FitAnswer = z.infer<typeof fitAnswer>

/** May this part go into this appliance? Three-valued, with reasons and sources; `fits` only when it is proved. */
export const judgeFit = defineRequest({
  name: 'fit-check.judge-fit',
  input: applianceQuestion.extend({ part: z.string().trim().min(1).max(60) }),
  output: fitAnswer,
})

export const stockAtLocation = z.object({
  location: z.string(),
  name: z.string(),
  bin: z.string().nullable(),
  quantity: z.int(),
})

export const fittingPart = z.object({
  partNumber: z.string(),
  kind: z.enum(['genuine', 'pattern']),
  maker: z.string(),
  description: z.string(),
  verdict,
  reasons: z.array(reason),
  /** In the order in which reading one by one decides soonest. */
  ask: z.array(askedReading),
  /** Null where nothing is asked, or only that the model number be confirmed. */
  askChosen: askChosen.nullable(),
  alsoNeeds: z.array(z.string()),
  /** The number that replaces this one, where one does. */
  supersededBy: z.string().nullable(),
  /** Of this part itself, such as returns as a wrong fit; those of the family stand with the family. */
  cautions: z.array(caution),
  onHand: z.array(stockAtLocation),
  /** Lowest offer for one piece, where a supplier offers the part. */
  price: z.object({ supplier: z.string(), price: z.string(), currency: z.string() }).nullable(),
})
export type FittingPart = z.infer<typeof fittingPart>

export const fittingFamily = z.object({
  family: familyCode,
  name: z.string(),
  function: z.string(),
  /** The best verdict among its parts. */
  verdict,
  quantityPerAppliance: z.int().nullable(),
  positions: z.array(z.string()),
  safetyDevice: z.boolean(),
  cautions: z.array(caution),
  parts: z.array(fittingPart),
})
export type FittingFamily = z.infer<typeof fittingFamily>

/** What goes into this appliance, family by family, with where each part is. */
export const listFittingParts = defineRequest({
  name: 'fit-check.list-fitting-parts',
  input: applianceQuestion.extend({
    /** Words of a function, family or part: `drain`, `door seal`. */
    function: z.string().trim().min(1).max(80).optional(),
  }),
  output: z.object({
    outcome: lookupOutcome,
    /** How many models the text leaves open; the verdicts hold over all of them. */
    models: z.int(),
    families: z.array(fittingFamily),
  }),
})
export type FittingParts = z.infer<typeof listFittingParts.output>

/** Every model that a part goes into, or a stretch of them, by brand and number. */
export const listFittedModels = defineRequest({
  name: 'fit-check.list-fitted-models',
  input: z.object({ part: z.string().trim().min(1).max(60), ...modelsAsked }),
  output: modelPage.extend({ partNumber: z.string() }),
})
