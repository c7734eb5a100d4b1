import type { LoadedFile, LoadReport } from '../../shared-schemas/catalogue.ts'
import type { CheckedInput } from '../../shared-schemas/index.ts'
import { inLongTransaction } from '../database/handles.ts'
import type { Task } from '../requests/handlers.ts'
import { Refusal } from '../requests/refusal.ts'
import type { Shop } from '../requests/shop.ts'
import { raiseCatalogueVersion } from './catalogue-state-queries.ts'
import { FitmentWriter } from './fitment-writer.ts'
import { appendLoadRun } from './load-run-queries.ts'
import type { RecordOpeningStock } from './loading/catalogue-file.ts'
import { KnownThings } from './loading/known-things.ts'
import { type FileToLoad, listFilesToLoad } from './loading/list-files.ts'
import { loadFile } from './loading/load-file.ts'
import { Rejects } from './loading/rejects.ts'
import { checkRejectsFile, writeRejects } from './loading/write-rejects.ts'

export interface LoadingShop extends Pick<Shop, 'database' | 'openOwnHandle' | 'now'> {
  /** Handed in, because the ledger stands above the catalogue. */
  readonly recordOpeningStock: RecordOpeningStock
}

/**
 * Loads every sound row of the files in one transaction and names the others; none at all when something breaks, on
 * a dry run, or, where asked to be strict, when any row is rejected.
 */
export async function loadFiles(
  shop: LoadingShop,
  { path, dryRun, strict, rejectsFile }: CheckedInput<'catalogue.load-files'>,
  task: Task,
): Promise<LoadReport> {
  const filesToLoad = await listFilesToLoad(path)
  if (rejectsFile !== undefined) await checkRejectsFile(rejectsFile)
  const rejects = new Rejects()
  const isKept = () => !dryRun && !(strict && rejects.asTheyStood().length > 0)
  const files = await loadTogether(shop, filesToLoad, { path, rejects, task, isKept })
  if (rejectsFile !== undefined) await writeRejects(rejectsFile, rejects.asTheyStood())
  const rejected = rejects.report()
  if (strict && rejected.length > 0)
    throw new Refusal({
      code: 'rows-rejected',
      rejected: rejected.length,
      first: rejected.slice(0, mostNamed),
    })
  return { files, rejected, dryRun }
}

/** Enough to begin mending with. */
const mostNamed = 20

interface Loading {
  readonly path: string
  readonly rejects: Rejects
  readonly task: Task
  readonly isKept: () => boolean
}

async function loadTogether(
  { openOwnHandle, recordOpeningStock, now }: LoadingShop,
  filesToLoad: readonly FileToLoad[],
  { path, rejects, task, isKept }: Loading,
): Promise<LoadedFile[]> {
  const { handle, release } = openOwnHandle()
  try {
    return await inLongTransaction(handle, async database => {
      database.run('SAVEPOINT before_loading')
      const fitments = new FitmentWriter(database)
      const run = { database, known: new KnownThings(database), fitments, recordOpeningStock }
      const files: LoadedFile[] = []
      for (const file of filesToLoad) files.push(await loadFile(run, file, { rejects, task }))
      if (!isKept()) database.run('ROLLBACK TO before_loading')
      else if (files.some(({ added, changed }) => added + changed > 0)) {
        raiseCatalogueVersion(database)
        appendLoadRun(database, fitments, { at: now(), path, correctionReason: null, ...countAll(files) })
      }
      return files
    })
  } finally {
    release()
  }
}

function countAll(files: readonly LoadedFile[]): Omit<LoadedFile, 'file'> {
  const all = { added: 0, changed: 0, unchanged: 0, rejected: 0 }
  for (const { added, changed, unchanged, rejected } of files) {
    all.added += added
    all.changed += changed
    all.unchanged += unchanged
    all.rejected += rejected
  }
  return all
}
