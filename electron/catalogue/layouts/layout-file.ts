import path from 'node:path'
import type { Encoding, Layout } from '../../../shared-schemas/supplier-layouts.ts'
import { orRefuse } from '../../requests/refusal.ts'
import { catalogueFiles } from '../files/all-files.ts'
import type { FileToLoad } from '../loading/list-files.ts'
import { examineFile } from '../reading/examine-file.ts'
import { openRows, settleReading } from '../reading/settle-reading.ts'
import { applyLayout } from './apply-layout.ts'
import { refuseFaultyLayout } from './keep-layouts.ts'

/**
 * A supplier's file as one to load, read through its layout. Refused here, before anything is loaded, where it is not
 * certain how it is to be read; `insisted` is the encoding that a person names for this once.
 */
export async function layoutFileToLoad(
  full: string,
  { layout, insisted }: { readonly layout: Layout; readonly insisted: Encoding | undefined },
): Promise<FileToLoad> {
  refuseFaultyLayout(layout)
  const examined = await examineFile(full, { encoding: insisted ?? layout.reading.encoding })
  const settled = orRefuse(settleReading(examined, layout.reading, { insisted }))
  const separator = settled.kind === 'csv' ? settled.separator : null
  let headings: readonly string[] = []
  const told = (found: readonly string[]) => {
    headings = found
  }
  return {
    file: fileNamed(layout.feeds),
    path: full,
    name: path.basename(full),
    isPlain: false,
    read: () => applyLayout(openRows(examined, settled), { layout, file: full, separator, told }),
    own: {
      headings: () => headings,
      tell: () => {},
      headingOf: column => headingOf(layout, column),
      decimalSignOf: column => layout.columns.find(match => match.column === column)?.decimalSign ?? '.',
      separator: separator ?? ',',
    },
  }
}

function fileNamed(feeds: string) {
  const file = catalogueFiles.find(({ name }) => name === feeds)
  if (file === undefined) throw new Error(`a sound layout feeds a catalogue file, not ${feeds}`)
  return file
}

/** A column that several headings of theirs fill, or none, goes by our name. */
function headingOf({ columns, shape }: Layout, column: string): string {
  if (shape.kind === 'wide-cell' && shape.column === column) return shape.heading
  return columns.find(match => match.column === column)?.heading ?? column
}
