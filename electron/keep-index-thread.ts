import { workerData } from 'node:worker_threads'
import { openDatabase } from './database/open-database.ts'
import { keepIndex } from './model-lookup/keep-index.ts'

/** A thread of its own: laying out a large catalogue takes seconds, in which the engine goes on answering. */
const { databaseFile } = workerData as { readonly databaseFile: string }
const database = openDatabase(databaseFile)
try {
  keepIndex(database)
} finally {
  database.close()
}
