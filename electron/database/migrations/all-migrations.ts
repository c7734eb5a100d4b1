import { firstSchema } from './0001-first-schema.ts'

/** In order, frozen once released. A file's place here is its number: the database's `user_version` after it ran. */
export const migrations: readonly string[] = [firstSchema]
