import type { AwkwardCase } from './awkward/awkward-case.ts'
import { kitAndPairCases } from './awkward/kits-and-pairs.ts'
import { numberCases } from './awkward/numbers.ts'
import { overFillingDishwasher } from './awkward/over-filling-dishwasher.ts'
import { plateReadingCases } from './awkward/plate-readings.ts'
import { statementCases } from './awkward/statements.ts'

/** Every awkward case of the sample shop, with the questions it answers and the verdict each must get. */
export const awkwardCases: readonly AwkwardCase[] = [
  ...overFillingDishwasher,
  ...plateReadingCases,
  ...statementCases,
  ...numberCases,
  ...kitAndPairCases,
]
