import type { HandlersOf } from '../requests/handlers.ts'
import type { Shop } from '../requests/shop.ts'
import { copyDatabase } from './backup.ts'
import { type Check, verifyDatabase } from './verify-database.ts'

export interface CheckedShop extends Pick<Shop, 'database'> {
  /** Handed in, because what the database holds is known to those who wrote it. */
  readonly checkFitments: () => Check
}

export function databaseHandlers({ database, checkFitments }: CheckedShop): HandlersOf<'database'> {
  return {
    'database.verify': () => {
      const checks = [...verifyDatabase(database), checkFitments()]
      return { ok: checks.every(check => check.ok), checks }
    },
    'database.back-up': ({ file }) => ({ file, bytes: copyDatabase(database.connection, file) }),
  }
}
