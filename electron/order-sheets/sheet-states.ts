import type { SheetState } from '../../shared-schemas/order-sheets.ts'
import type { Decided } from '../requests/refusal.ts'

/** How far a person has brought a sheet; what has come of it, the receipts say. */
export type Stage = 'draft' | 'checked' | 'sent' | 'cancelled'

export type SheetAct = 'change' | 'check' | 'reopen' | 'send' | 'receive' | 'close' | 'cancel' | 'export'

/** What may be done with a sheet in each state, and the stage that it is at afterwards. */
const stageAfter: Record<SheetAct, Partial<Record<SheetState, Stage>>> = {
  change: { draft: 'draft' },
  check: { draft: 'checked' },
  reopen: { checked: 'draft' },
  send: { checked: 'sent' },
  // More may come than was ordered, so that a sheet of which all has come still takes receipts.
  receive: { sent: 'sent', 'part-received': 'sent', received: 'sent' },
  close: { sent: 'sent', 'part-received': 'sent', received: 'sent', cancelled: 'sent' },
  cancel: { draft: 'cancelled', checked: 'cancelled', sent: 'cancelled' },
  export: { checked: 'checked', sent: 'sent', 'part-received': 'sent', received: 'sent', cancelled: 'sent' },
}

export interface SheetInState {
  readonly number: string
  readonly stage: Stage
  readonly received: number
  readonly toCome: number
}

/** The state as people name it: of a sheet that was sent, by what has come and what is still to come. */
export function stateOf({ stage, received, toCome }: Omit<SheetInState, 'number'>): SheetState {
  if (stage !== 'sent') return stage
  if (toCome > 0) return received > 0 ? 'part-received' : 'sent'
  return received > 0 ? 'received' : 'cancelled'
}

/** The stage after this act, or that the sheet's state forbids it. */
export function decideStage(sheet: SheetInState, act: SheetAct): Decided<Stage> {
  const state = stateOf(sheet)
  const after = stageAfter[act][state]
  // A sheet that a person cancelled as a whole has no remainders to open again.
  const isGone = sheet.stage === 'cancelled'
  if (after !== undefined && !isGone) return { ok: true, value: after }
  const allowed = (Object.keys(stageAfter[act]) as SheetState[]).filter(one => one !== state)
  return {
    ok: false,
    problem: { code: 'sheet-state-forbids', number: sheet.number, state, act, allowed },
  }
}
