import { globSync, readFileSync } from 'node:fs'
import path from 'node:path'

export const programFolder = path.join(import.meta.dirname, '../..')

export interface SourceFile {
  /** From the repository's top, with `/`. */
  readonly file: string
  readonly text: string
}

/** Every source of ours under these folders. */
export function listSources(folders: readonly string[]): SourceFile[] {
  const patterns = folders.map(folder => `${folder}/**/*.{ts,tsx,js,mjs,cjs}`)
  return globSync(patterns, { cwd: programFolder })
    .map(file => file.split(path.sep).join('/'))
    .filter(file => !file.includes('node_modules/'))
    .sort()
    .map(file => ({ file, text: readFileSync(path.join(programFolder, file), 'utf8') }))
}

export const productFolders = ['electron', 'renderer', 'shared-schemas', 'sample-catalogue']
