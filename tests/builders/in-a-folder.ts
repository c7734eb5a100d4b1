import { createHash } from 'node:crypto'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'

/** Lets `use` work in an empty folder of its own, and takes the folder away again. */
export function inAFolder<Value>(use: (folder: string) => Value): Value {
  const folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-test-'))
  try {
    return use(folder)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** Every file of a folder with a fingerprint of its bytes, to show that nothing was touched. */
export function fingerprintFolder(folder: string): readonly string[] {
  return readdirSync(folder)
    .sort()
    .map(name => {
      const bytes = readFileSync(path.join(folder, name))
      return `${name} ${createHash('sha256').update(bytes).digest('hex')}`
    })
}
