import { readdir, stat } from 'node:fs/promises'
import path from 'node:path'
import { Refusal } from '../../requests/refusal.ts'
import { catalogueFiles } from '../files/all-files.ts'
import { refusing } from '../reading/refuse-unreadable.ts'
import type { CatalogueFile } from './catalogue-file.ts'

export interface FileToLoad {
  readonly file: CatalogueFile
  readonly path: string
}

/** The catalogue files of a folder, or the one that is named, each after those that it refers to. */
export async function listFilesToLoad(given: string): Promise<FileToLoad[]> {
  const isFolder = (await refusing(given, () => stat(given))).isDirectory()
  if (!isFolder) return [knownFile(given)]
  const names = await refusing(given, () => readdir(given))
  const found = names
    .filter(name => name.toLowerCase().endsWith('.csv'))
    .map(name => knownFile(path.join(given, name)))
  if (found.length === 0) throw new Refusal({ code: 'nothing-to-load', folder: given })
  return found.sort((one, other) => catalogueFiles.indexOf(one.file) - catalogueFiles.indexOf(other.file))
}

function knownFile(full: string): FileToLoad {
  const file = catalogueFiles.find(({ name }) => name === path.basename(full))
  if (file !== undefined) return { file, path: full }
  const known = catalogueFiles.map(({ name }) => name)
  throw new Refusal({ code: 'file-not-of-catalogue', file: full, known })
}
