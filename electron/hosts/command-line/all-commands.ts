import { backup, restore, verify } from './care-commands.ts'
import { check } from './check-command.ts'
import type { Command } from './command.ts'
import { count } from './count-command.ts'
import { faults } from './faults-command.ts'
import { find } from './find-command.ts'
import { fit } from './fit-command.ts'
import { history } from './history-command.ts'
import { jobs } from './jobs-command.ts'
import { layouts } from './layouts-command.ts'
import { levels } from './levels-command.ts'
import { load } from './load-command.ts'
import { loads } from './loads-command.ts'
import { models, parts } from './parts-commands.ts'
import { reorder } from './reorder-command.ts'
import { serve } from './serve-command.ts'
import { sheets } from './sheets-command.ts'
import { move, onhand } from './stock-commands.ts'
import { topup } from './top-up-command.ts'

/** Every command, in the order of the help. */
export const commands: readonly Command[] = [
  load,
  layouts,
  loads,
  find,
  fit,
  parts,
  models,
  history,
  faults,
  check,
  sheets,
  move,
  onhand,
  count,
  jobs,
  topup,
  levels,
  reorder,
  backup,
  restore,
  verify,
  serve,
]
