import { join } from 'node:path'
import type { LoadedFile, LoadReport } from '../../shared-schemas/catalogue.ts'
import type { CheckedInput } from '../../shared-schemas/index.ts'
import { inLongTransaction } from '../database/handles.ts'
import type { Task } from '../requests/handlers.ts'
import { Refusal } from '../requests/refusal.ts'
import type { Shop } from '../requests/shop.ts'
import { raiseCatalogueVersion } from './catalogue-state-queries.ts'
import { FitmentWriter } from './fitment-writer.ts'
import { layoutNamed } from './layouts/keep-layouts.ts'
import { layoutFileToLoad } from './layouts/layout-file.ts'
import { beginLog } from './load-log/begin-log.ts'
import { hashFile } from './load-log/hash-file.ts'
import { listRowChanges } from './load-log/list-row-changes.ts'
import { appendAccount, appendLoadedFile } from './load-log/load-log-queries.ts'
import { appendLoadRun } from './load-run-queries.ts'
import type { RecordOpeningStock } from './loading/catalogue-file.ts'
import { KnownThings } from './loading/known-things.ts'
import { type FilesToLoad, type FileToLoad, listFilesToLoad, notOfCatalogue } from './loading/list-files.ts'
import { loadFile } from './loading/load-file.ts'
import { MendFinder } from './loading/propose-mend.ts'
import { Rejects } from './loading/rejects.ts'
import { placeRejects, writeRejects } from './loading/write-rejects.ts'

export interface LoadingShop extends Pick<Shop, 'database' | 'openOwnHandle' | 'now' | 'device'> {
  /** Handed in, because the ledger stands above the catalogue. */
  readonly recordOpeningStock: RecordOpeningStock
}

/**
 * Loads every sound row of the files in one transaction and names the others; none at all when something breaks, on
 * a dry run, or, where asked to be strict, when any row is rejected.
 */
export async function loadFiles(
  shop: LoadingShop,
  asked: CheckedInput<'catalogue.load-files'>,
  task: Task,
): Promise<LoadReport> {
  const { dryRun, strict, rejectsFile } = asked
  const { files: filesToLoad, leftOut } = await findFilesToLoad(shop, asked)
  const isFolder = filesToLoad[0]?.path !== asked.path
  const place =
    rejectsFile === undefined
      ? undefined
      : await placeRejects(rejectsFile, { sources: filesToLoad, isFolder })
  const rejects = new Rejects()
  const isKept = () => !dryRun && !(strict && rejects.asTheyStood().length > 0)
  const { files, changes } = await loadTogether(shop, filesToLoad, { asked, rejects, task, isKept })
  if (place !== undefined) await writeRejects(place, rejects.asTheyStood())
  const rejected = rejects.report()
  if (strict && rejected.length > 0)
    throw new Refusal({
      code: 'rows-rejected',
      rejected: rejected.length,
      first: rejected.slice(0, mostNamed),
    })
  return { files, leftOut: [...leftOut], rejected, dryRun, changes }
}

/** The supplier's file of a layout, or the catalogue files of a folder. */
async function findFilesToLoad(
  { database }: LoadingShop,
  { path, layout: name, trialLayout, encoding, strict }: CheckedInput<'catalogue.load-files'>,
): Promise<FilesToLoad> {
  const layout = name === undefined ? trialLayout : layoutNamed(database, name)
  if (layout !== undefined)
    return { files: [await layoutFileToLoad(path, { layout, insisted: encoding })], leftOut: [] }
  const found = await listFilesToLoad(path)
  const [stray] = found.leftOut
  if (strict && stray !== undefined) throw notOfCatalogue(join(path, stray))
  return found
}

/** Enough to begin mending with. */
const mostNamed = 20

interface Loading {
  readonly asked: CheckedInput<'catalogue.load-files'>
  readonly rejects: Rejects
  readonly task: Task
  readonly isKept: () => boolean
}

async function loadTogether(
  shop: LoadingShop,
  filesToLoad: readonly FileToLoad[],
  { asked, rejects, task, isKept }: Loading,
): Promise<Pick<LoadReport, 'files' | 'changes'>> {
  const { handle, release } = shop.openOwnHandle()
  try {
    return await inLongTransaction(handle, async database => {
      database.run('SAVEPOINT before_loading')
      const log = beginLog(database)
      const fitments = new FitmentWriter(database)
      const { edition } = asked
      const { recordOpeningStock } = shop
      const run = { database, known: new KnownThings(database), fitments, recordOpeningStock, edition }
      const files: LoadedFile[] = []
      const mends = new MendFinder(run.known, database)
      for (const file of filesToLoad) files.push(await loadFile(run, file, { rejects, mends, task }))
      const changes = log.end()
      const shown = listRowChanges(database, changes, asked.showChanges)
      if (!isKept()) database.run('ROLLBACK TO before_loading')
      else if (files.some(({ added, changed, retired }) => added + changed + retired > 0)) {
        raiseCatalogueVersion(database)
        const { path, initials = '' } = asked
        appendLoadRun(database, fitments, {
          at: shop.now(),
          path,
          correctionReason: null,
          ...countAll(files),
        })
        const { loadRunId } = fitments
        appendAccount(database, {
          loadRunId,
          initials,
          device: shop.device,
          changes,
          undoes: null,
          layout: asked.layout === undefined ? null : layoutNamed(database, asked.layout).name,
        })
        for (const [at, { path }] of filesToLoad.entries())
          appendLoadedFile(database, loadRunId, { ...(files[at] as LoadedFile), ...(await hashFile(path)) })
      }
      return { files, changes: shown }
    })
  } finally {
    release()
  }
}

function countAll(files: readonly LoadedFile[]): Omit<LoadedFile, 'file' | 'retired'> {
  const all = { added: 0, changed: 0, unchanged: 0, rejected: 0 }
  for (const { added, changed, unchanged, retired, rejected } of files) {
    all.added += added
    all.changed += changed + retired
    all.unchanged += unchanged
    all.rejected += rejected
  }
  return all
}
