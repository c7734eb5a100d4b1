import { z } from 'zod'
import { rejectedRow } from './catalogue.ts'
import { encoding, encodingFound, separatorFound, sheet } from './supplier-layouts.ts'

/**
 * Why a request was not done. A code and the facts, never a sentence: `problem-wording.ts` writes the sentence.
 * `bad-input` and the file and database problems leave everything as it was.
 */
export const problem = z.discriminatedUnion('code', [
  z.object({ code: z.literal('malformed'), request: z.string(), where: z.string(), why: z.string() }),
  z.object({ code: z.literal('unknown-request'), request: z.string() }),
  z.object({ code: z.literal('unexpected'), reference: z.string() }),
  z.object({ code: z.literal('still-starting') }),
  z.object({ code: z.literal('plate-text-too-short'), typed: z.string(), needed: z.int() }),
  z.object({ code: z.literal('brand-not-found'), typed: z.string(), nearest: z.array(z.string()) }),
  z.object({ code: z.literal('part-not-found'), typed: z.string(), nearest: z.array(z.string()) }),
  z.object({
    code: z.literal('model-not-settled'),
    typed: z.string(),
    /** How many models the text leaves open, and the first of them, or of the nearest. */
    open: z.int(),
    first: z.array(z.string()),
  }),
  z.object({ code: z.literal('record-not-found'), recordId: z.string() }),
  z.object({
    code: z.literal('record-not-open'),
    recordId: z.string(),
    why: z.enum(['confirmed', 'settled']),
  }),
  z.object({ code: z.literal('correction-not-standing'), part: z.string(), source: z.string() }),
  z.object({ code: z.literal('location-not-found'), typed: z.string(), known: z.array(z.string()) }),
  z.object({ code: z.literal('no-such-movement'), from: z.string(), to: z.string() }),
  z.object({ code: z.literal('reference-needed'), outside: z.enum(['job', 'customer']) }),
  z.object({
    code: z.literal('not-enough-on-hand'),
    part: z.string(),
    location: z.string(),
    onHand: z.int(),
    wanted: z.int(),
  }),
  z.object({
    code: z.literal('kept-for-others'),
    part: z.string(),
    location: z.string(),
    free: z.int(),
    references: z.array(z.string()),
  }),
  z.object({ code: z.literal('movement-not-found'), movementId: z.string() }),
  z.object({ code: z.literal('movement-is-reversal'), movementId: z.string() }),
  z.object({ code: z.literal('movement-reversed-already'), movementId: z.string(), by: z.string() }),
  z.object({ code: z.literal('movement-told-otherwise'), file: z.string(), movementId: z.string() }),
  z.object({ code: z.literal('count-not-found'), countId: z.string() }),
  z.object({ code: z.literal('count-posted-already'), countId: z.string(), postedAt: z.string() }),
  z.object({ code: z.literal('location-not-van'), location: z.string() }),
  z.object({ code: z.literal('nothing-counted'), location: z.string() }),
  z.object({ code: z.literal('reservation-not-open'), reservationId: z.string() }),
  z.object({
    code: z.literal('ledger-names-unknown'),
    file: z.string(),
    what: z.enum(['location', 'part']),
    name: z.string(),
  }),
  z.object({ code: z.literal('supplier-not-found'), typed: z.string(), known: z.array(z.string()) }),
  z.object({ code: z.literal('stop-not-found'), stop: z.string(), partNumber: z.string() }),
  z.object({ code: z.literal('stop-not-overridable'), stop: z.string(), why: z.string() }),
  z.object({ code: z.literal('file-unreadable'), file: z.string(), why: z.string() }),
  z.object({ code: z.literal('file-not-of-catalogue'), file: z.string(), known: z.array(z.string()) }),
  z.object({
    code: z.literal('wrong-header'),
    file: z.string(),
    unknown: z.array(z.string()),
    missing: z.array(z.string()),
    repeated: z.array(z.string()),
  }),
  z.object({
    code: z.literal('encoding-not-certain'),
    file: z.string(),
    /** What the layout names, which the bytes speak against; null where it is to be found out. */
    asked: encoding.nullable(),
    found: encodingFound,
  }),
  z.object({ code: z.literal('separator-not-certain'), file: z.string(), found: separatorFound }),
  z.object({
    code: z.literal('sheet-not-settled'),
    file: z.string(),
    asked: z.string().nullable(),
    sheets: z.array(sheet),
  }),
  z.object({ code: z.literal('layout-not-found'), name: z.string(), known: z.array(z.string()) }),
  z.object({ code: z.literal('layout-exists'), name: z.string() }),
  z.object({
    code: z.literal('layout-misfit'),
    file: z.string(),
    layout: z.string(),
    missing: z.array(z.string()),
    added: z.array(z.string()),
    repeated: z.array(z.string()),
  }),
  z.object({ code: z.literal('layout-wrong'), layout: z.string(), faults: z.array(z.string()) }),
  z.object({ code: z.literal('nothing-to-load'), folder: z.string() }),
  z.object({ code: z.literal('load-stopped') }),
  z.object({ code: z.literal('load-not-found'), loadRunId: z.int() }),
  z.object({ code: z.literal('load-undone-already'), loadRunId: z.int(), undoneBy: z.int() }),
  z.object({ code: z.literal('load-is-undoing'), loadRunId: z.int(), undoes: z.int() }),
  z.object({ code: z.literal('load-built-upon'), loadRunId: z.int(), later: z.int() }),
  z.object({ code: z.literal('rows-rejected'), rejected: z.int(), first: z.array(rejectedRow) }),
  z.object({
    code: z.literal('database-from-newer-program'),
    file: z.string(),
    found: z.int(),
    known: z.int(),
  }),
  z.object({ code: z.literal('database-damaged'), file: z.string(), why: z.string() }),
  z.object({ code: z.literal('database-not-ours'), file: z.string() }),
  z.object({ code: z.literal('database-unopenable'), file: z.string(), why: z.string() }),
  z.object({ code: z.literal('database-busy'), file: z.string() }),
  z.object({ code: z.literal('file-exists'), file: z.string() }),
  z.object({ code: z.literal('database-absent'), file: z.string() }),
  z.object({ code: z.literal('database-in-use'), file: z.string() }),
  z.object({ code: z.literal('copy-not-sound'), file: z.string(), why: z.string() }),
  z.object({ code: z.literal('program-not-running') }),
  z.object({ code: z.literal('page-not-admitted') }),
  z.object({ code: z.literal('port-busy'), port: z.int() }),
  z.object({ code: z.literal('already-running'), file: z.string(), pid: z.int(), port: z.int() }),
])

export type Problem = z.infer<typeof problem>
export type ProblemCode = Problem['code']
