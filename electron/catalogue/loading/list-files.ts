import { readdir, stat } from 'node:fs/promises'
import path from 'node:path'
import { Refusal } from '../../requests/refusal.ts'
import { catalogueFiles } from '../files/all-files.ts'
import { readCsvRows } from '../reading/read-csv-rows.ts'
import { refusing } from '../reading/refuse-unreadable.ts'
import { readMendedRows } from '../reading/rejects-header.ts'
import type { RowSource } from '../reading/source-rows.ts'
import type { CatalogueFile } from './catalogue-file.ts'

/** One file of a run, and what the catalogue file is that its rows are for. */
export interface FileToLoad {
  readonly file: CatalogueFile
  readonly path: string
  /** What it is called in the report. */
  readonly name: string
  /** Its rows as rows of the catalogue file, the header first; it may be read more than once. */
  readonly read: () => RowSource
  /** Whether its lines are just those of a catalogue file, so that they may be taken as bytes. */
  readonly isPlain: boolean
  /** For the rejected rows: its own headings, once it was read, and which of them fills a column of ours. */
  readonly own: OwnHeadings
}

export interface OwnHeadings {
  readonly headings: () => readonly string[]
  /** Told the header where the file's lines were taken as bytes, and nobody else has seen it. */
  readonly tell: (header: readonly string[]) => void
  readonly headingOf: (column: string) => string
  /** With which a figure in that column is written. */
  readonly decimalSignOf: (column: string) => '.' | ','
  /** What parts its cells, where it is CSV. */
  readonly separator: string
}

export interface FilesToLoad {
  readonly files: readonly FileToLoad[]
  /** CSV files of the folder that have no catalogue file's name; a person is told of them. */
  readonly leftOut: readonly string[]
}

/** The catalogue files of a folder, or the one that is named, each after those that it refers to. */
export async function listFilesToLoad(given: string): Promise<FilesToLoad> {
  const isFolder = (await refusing(given, () => stat(given))).isDirectory()
  if (!isFolder) return { files: [knownFile(given)], leftOut: [] }
  const names = (await refusing(given, () => readdir(given))).filter(name => /\.csv$/i.test(name)).sort()
  if (names.length === 0) throw new Refusal({ code: 'nothing-to-load', folder: given })
  const known = names.filter(isKnown)
  const leftOut = names.filter(name => !isKnown(name))
  // Where no name is right, the first that is wrong is refused by name.
  const taken = known.length > 0 ? known : leftOut
  const files = taken.map(name => knownFile(path.join(given, name)))
  files.sort((one, other) => catalogueFiles.indexOf(one.file) - catalogueFiles.indexOf(other.file))
  return { files, leftOut }
}

function isKnown(name: string): boolean {
  return catalogueFiles.some(file => file.name === name)
}

function knownFile(full: string): FileToLoad {
  const file = catalogueFiles.find(({ name }) => name === path.basename(full))
  if (file !== undefined) return catalogueFileToLoad(file, full)
  throw notOfCatalogue(full)
}

/** The refusal of a file because of its name. */
export function notOfCatalogue(full: string): Refusal {
  return new Refusal({
    code: 'file-not-of-catalogue',
    file: full,
    known: catalogueFiles.map(({ name }) => name),
  })
}

function catalogueFileToLoad(file: CatalogueFile, full: string): FileToLoad {
  let headings: readonly string[] = []
  return {
    file,
    path: full,
    name: file.name,
    isPlain: true,
    async *read() {
      let isFirst = true
      for await (const batch of readMendedRows(readCsvRows(full))) {
        const [first] = batch.rows
        if (isFirst && first !== undefined) {
          headings = first.cells.map(cell => cell.trim())
          isFirst = false
        }
        yield batch
      }
    },
    own: {
      headings: () => headings,
      tell: header => {
        if (headings.length === 0) headings = header
      },
      headingOf: column => column,
      decimalSignOf: () => '.',
      separator: ',',
    },
  }
}
