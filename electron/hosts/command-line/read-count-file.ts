import papaparse from 'papaparse'
import { WrongUse } from './wrong-use.ts'

export interface CountedLine {
  readonly partNumber: string
  readonly pieces: number
}

type Row = Readonly<Partial<Record<'part_number' | 'counted', string>>>

/**
 * The lines of a count: `part_number,counted`. Every line is right, or nothing is taken. A part that comes twice lay in
 * two places, and is added up.
 */
export function readCountFile(text: string, file: string): CountedLine[] {
  const { data, meta } = papaparse.parse<Row>(text.replace(/^\u{feff}/u, ''), {
    header: true,
    delimiter: ',',
    skipEmptyLines: 'greedy',
    transformHeader: heading => heading.trim(),
  })
  const columns = meta.fields ?? []
  if (!columns.includes('part_number') || !columns.includes('counted'))
    throw new WrongUse(
      `${file} needs the columns part_number and counted; it has ${columns.join(', ') || 'none'}.`,
    )
  const pieces = new Map<string, number>()
  for (const [at, { part_number = '', counted = '' }] of data.entries()) {
    const partNumber = part_number.trim()
    if (partNumber === '' || !/^\d{1,6}$/.test(counted.trim()))
      throw new WrongUse(
        `${file}, row ${at + 1} under the header: “${part_number},${counted}” is no line of a count. Write the part number and how many were counted.`,
      )
    pieces.set(partNumber, (pieces.get(partNumber) ?? 0) + Number(counted))
  }
  if (pieces.size === 0)
    throw new WrongUse(`${file} holds no line. Write one for each part that was counted.`)
  return [...pieces].map(([partNumber, counted]) => ({ partNumber, pieces: counted }))
}
