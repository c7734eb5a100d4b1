import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import path from 'node:path'
import { Refusal } from '../../requests/refusal.ts'
import { wordFileError } from '../../requests/word-file-error.ts'
import type { SheetFile } from './sheet-document.ts'

export interface NewFolder {
  readonly name: string
  readonly files: readonly SheetFile[]
}

/**
 * Writes folders of files below `parent`, which is made where it is missing. Each folder gets its name only when all its
 * files, and those of all others, have reached the disk. One that is there already stays: with the same bytes nothing is
 * left to do, with others it is refused before anything is written.
 */
export function writeFolders(parent: string, folders: readonly NewFolder[]): void {
  const missing = folders.filter(folder => !isThere(parent, folder))
  const unfinished = missing.map(({ name }) => path.join(parent, `.${name}.part-${process.pid}`))
  try {
    mkdirSync(parent, { recursive: true })
    for (const [at, { files }] of missing.entries()) writeUnfinished(unfinished[at] ?? '', files)
    for (const [at, { name }] of missing.entries()) renameSync(unfinished[at] ?? '', path.join(parent, name))
    if (missing.length > 0) syncFolder(parent)
  } catch (thrown) {
    for (const folder of unfinished) rmSync(folder, { recursive: true, force: true })
    throw new Refusal({ code: 'folder-unwritable', folder: parent, why: wordFileError(thrown) })
  }
}

/** Whether a folder stands there with these very files. */
function isThere(parent: string, { name, files }: NewFolder): boolean {
  const folder = path.join(parent, name)
  if (!existsSync(folder)) return false
  const isSame =
    readNames(folder).join() ===
      files
        .map(file => file.name)
        .sort()
        .join() && files.every(file => readFileSync(path.join(folder, file.name)).equals(file.bytes))
  if (!isSame) throw new Refusal({ code: 'file-exists', file: folder })
  return true
}

/** A file where the folder should be has no names in it. */
function readNames(folder: string): string[] {
  try {
    return readdirSync(folder).sort()
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'ENOTDIR') return []
    throw new Refusal({ code: 'folder-unwritable', folder, why: wordFileError(thrown) })
  }
}

function writeUnfinished(folder: string, files: readonly SheetFile[]): void {
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder)
  for (const { name, bytes } of files) writeFileSync(path.join(folder, name), bytes, { flush: true })
  syncFolder(folder)
}

/** On Windows a folder cannot be opened, and its names are safe without. */
function syncFolder(folder: string): void {
  if (process.platform === 'win32') return
  const descriptor = openSync(folder, 'r')
  try {
    fsyncSync(descriptor)
  } finally {
    closeSync(descriptor)
  }
}
