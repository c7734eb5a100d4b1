import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'

/** Catalogue files by their names; a text is written as UTF-8, bytes as they are. */
export type CatalogueTexts = Readonly<Record<string, string | Uint8Array>>

/** Writes the files into a folder of their own, lets `use` read it, and takes it away again. */
export async function withCatalogueFolder<Value>(
  files: CatalogueTexts,
  use: (folder: string) => Promise<Value>,
): Promise<Value> {
  const folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-catalogue-'))
  try {
    for (const [name, content] of Object.entries(files)) writeFileSync(path.join(folder, name), content)
    return await use(folder)
  } finally {
    rmSync(folder, { recursive: true })
  }
}
