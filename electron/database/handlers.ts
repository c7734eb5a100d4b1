import type { HandlersOf } from '../requests/handlers.ts'
import type { Shop } from '../requests/shop.ts'
import { copyDatabase } from './backup.ts'
import { verifyDatabase } from './verify-database.ts'

export function databaseHandlers({ database }: Pick<Shop, 'database'>): HandlersOf<'database'> {
  return {
    'database.verify': () => {
      const checks = verifyDatabase(database)
      return { ok: checks.every(check => check.ok), checks }
    },
    'database.back-up': ({ file }) => ({ file, bytes: copyDatabase(database.connection, file) }),
  }
}
