import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'

/** The data stand beside the repository, not in it. */
const carPartsFile =
  process.env.TALLYPLATE_CAR_PARTS ?? path.join(import.meta.dirname, '../../../shared/data/carparts-open.csv')

/**
 * Monthly demand of car parts, January 1998 to March 2002: data of Hyndman, Koehler, Ord and Snyder, Forecasting with
 * Exponential Smoothing, Springer 2008 (object `carparts` of the R package expsmooth; redistributed in the Monash archive,
 * doi 10.5281/zenodo.4656021, CC BY 4.0). Used for measuring only and not shipped. The complete rows: parts with all months.
 */
export function readCarParts(): Int32Array[] {
  if (!existsSync(carPartsFile))
    throw new Error(
      `The open car parts are not at ${carPartsFile}: put them there, or name their file in TALLYPLATE_CAR_PARTS.`,
    )
  const [, ...lines] = readFileSync(carPartsFile, 'utf8').trimEnd().split('\n')
  return lines
    .map(line => line.split(',').slice(1))
    .filter(cells => cells.every(cell => cell !== ''))
    .map(cells => Int32Array.from(cells, Number))
}
