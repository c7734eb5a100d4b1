import type { SparseRow } from './catalogue-rows.ts'
import { type SamplePart, writeStates } from './make-parts.ts'
import { listPlanted } from './planted-rows.ts'
import { hashText, itemAt } from './seeded-random.ts'

type Supersession = SparseRow<'supersessions.csv'>

/** Which number gave way to which: mostly for good, some either way, a few by made date or with a loom besides. */
export function listSupersessions(parts: readonly SamplePart[]): Supersession[] {
  const supplied = parts.filter(part => part.replacedBy === '' && part.kind === 'genuine')
  const twins = Map.groupBy(supplied, part => `${part.family} ${writeStates(part.states)}`)
  const looms = supplied.filter(part => part.family.startsWith('adapter-loom'))
  const made = parts
    .filter(part => part.replacedBy !== '' && !part.isPlanted)
    .flatMap(part => replacePart(part, twins.get(`${part.family} ${writeStates(part.states)}`) ?? [], looms))
  return [...listPlanted('supersessions.csv'), ...made]
}

function replacePart(
  part: SamplePart,
  twins: readonly SamplePart[],
  looms: readonly SamplePart[],
): Supersession[] {
  const draw = hashText(`way ${part.partNumber}`)
  const row = { old_part: part.partNumber, new_part: part.replacedBy, way: 'one' }
  const isWired = part.states.has('volts') && !part.family.startsWith('adapter')
  if (isWired && draw % 12 === 1)
    return [{ ...row, also_needs: itemAt(looms, Math.floor(draw / 12)).partNumber }]
  const twin = twins.find(other => other.partNumber !== part.replacedBy)
  if (twin !== undefined && draw % 12 === 2) {
    return [
      { ...row, new_part: twin.partNumber, made_to: '2012-12' },
      { ...row, made_from: '2013-01' },
    ]
  }
  return [{ ...row, way: draw % 5 === 0 ? 'both' : 'one' }]
}
