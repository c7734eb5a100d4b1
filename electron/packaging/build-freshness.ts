import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { glob, stat, writeFile } from 'node:fs/promises'
import path from 'node:path'

const sources = [
  '{electron,renderer,shared-schemas}/**/*.{ts,tsx,css,html,svg,json,ttf}',
  'package-lock.json',
]

/** Whether `dist/` was made from the sources as they stand. Looks at sizes and times only, so it takes milliseconds. */
export async function isBuildFresh(root: string): Promise<boolean> {
  return readNote(root) === (await fingerprintSources(root))
}

export async function noteBuild(root: string): Promise<void> {
  await writeFile(noteFile(root), await fingerprintSources(root))
}

async function fingerprintSources(root: string): Promise<string> {
  const files: string[] = []
  for await (const file of glob(sources, { cwd: root })) files.push(file)
  const hash = createHash('sha256')
  for (const file of files.sort()) {
    const { size, mtimeMs } = await stat(path.join(root, file))
    hash.update(`${file} ${size} ${mtimeMs}\n`)
  }
  return hash.digest('hex')
}

function readNote(root: string): string | undefined {
  try {
    return readFileSync(noteFile(root), 'utf8')
  } catch {
    return undefined
  }
}

function noteFile(root: string): string {
  return path.join(root, 'dist/built-from.txt')
}
