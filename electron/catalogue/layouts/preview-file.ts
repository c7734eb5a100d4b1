import path from 'node:path'
import type { CheckedInput } from '../../../shared-schemas/index.ts'
import type { FilePreview } from '../../../shared-schemas/supplier-layouts.ts'
import type { ReadableDatabase } from '../../database/handles.ts'
import type { SourceRow } from '../reading/source-rows.ts'
import { findMisfit } from './find-misfit.ts'
import { listLayouts } from './layout-queries.ts'
import { fillReading, readHead } from './read-head.ts'

/** The first rows of a file as they would probably be read, with what was found in its bytes and how sure that is. */
export async function previewFile(
  database: ReadableDatabase,
  asked: CheckedInput<'catalogue.preview-file'>,
): Promise<FilePreview> {
  const { examined, settled, headings, above, rows } = await readHead(asked.path, asked)
  const isText = examined.kind === 'csv'
  return {
    file: path.basename(asked.path),
    bytes: examined.bytes,
    kind: examined.kind,
    encoding: isText ? examined.encoding : null,
    separator: isText ? examined.separator : null,
    separatorLine: isText && examined.separatorLine,
    sheets: isText ? [] : [...examined.sheets],
    reading: fillReading(asked.reading, settled),
    headings: [...headings],
    above: above.map(showRow),
    rows: rows.map(showRow),
    layouts: listLayouts(database)
      .filter(layout => findMisfit(layout, headings) === undefined)
      .map(({ name }) => name),
  }
}

function showRow({ line, cells, fault }: SourceRow): FilePreview['rows'][number] {
  return { line, cells: [...cells], fault: fault?.reason ?? null }
}
