import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { checkedOrderHeader } from '../../../shared-schemas/checked-order-text.ts'
import { Refusal } from '../../requests/refusal.ts'
import { wordFileError } from '../../requests/word-file-error.ts'

/** Refuses, before anything is checked, to write over a file that is not an earlier check. */
export function refuseOtherFile(file: string): void {
  let present: string
  try {
    present = readFileSync(file, 'utf8')
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'ENOENT') return
    throw unwritable(file, thrown)
  }
  if (!present.startsWith(checkedOrderHeader)) throw new Refusal({ code: 'file-exists', file })
}

/** Writes the file whole, or not at all. */
export function writeCheckedFile(file: string, text: string): void {
  const unfinished = `${file}.part`
  try {
    writeFileSync(unfinished, text, { flush: true })
    renameSync(unfinished, file)
  } catch (thrown) {
    rmSync(unfinished, { force: true })
    throw unwritable(file, thrown)
  }
}

function unwritable(file: string, thrown: unknown): Refusal {
  return new Refusal({
    code: 'file-unreadable',
    file,
    why: `nothing can be written there: ${wordFileError(thrown)}`,
  })
}
