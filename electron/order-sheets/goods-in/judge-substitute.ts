import type { Output } from '../../../shared-schemas/index.ts'
import type { CheckedLine } from '../../../shared-schemas/order-check.ts'
import type { Part } from '../../catalogue/part-queries.ts'
import { type CurrentPart, followToCurrent, twinsOf } from '../../fit-check/follow-supersessions.ts'
import { anyDay, covers } from '../../fit-check/made-dates.ts'
import type { Replacement } from '../../fit-check/part-dossier.ts'
import type { StoredLine } from '../sheet-queries.ts'

type Judged = Omit<Output<'goods-in.judge-substitute'>, 'partNumber' | 'description' | 'ordered'>

/** What was ordered, with the replacements round it. */
export interface Ordered extends Pick<StoredLine, 'partId' | 'partNumber'> {
  readonly family: string
  readonly replacements: readonly Replacement[]
}

/**
 * What came is judged in the appliance that the line is for, as the order check judged what was ordered. It must do the
 * same work besides: a lock may fit the machine that waits for a pump.
 */
export function judgeInAppliance(came: Part, ordered: Ordered, { verdict, flags }: CheckedLine): Judged {
  const cautions = flags.filter(({ severity }) => severity === 'caution').map(({ text }) => text)
  if (came.family !== ordered.family && !findStanding(ordered).ids.has(came.partId))
    return { verdict, isProved: false, text: wordUnproved(came, ordered), cautions }
  const stops = flags.filter(({ severity, code }) => severity === 'stop' && code !== ofSupplier)
  const isProved = stops.length === 0 && (verdict === 'fits' || verdict === 'fits-with-changes')
  const changes = verdict === 'fits-with-changes' ? ', with changes' : ''
  const text = isProved
    ? `It fits the appliance of this line${changes}.`
    : stops.map(stop => stop.text).join(' ') || 'Nothing proves that it fits the appliance of this line.'
  return { verdict, isProved, text, cautions }
}

/** It has come, whoever offers it. */
const ofSupplier = 'not-offered-by-supplier'

/** For the shelf a part may stand for another where the supersessions say so of every appliance. */
export function judgeOnShelf(came: Part, ordered: Ordered): Judged {
  const { ids, current } = findStanding(ordered)
  if (!ids.has(came.partId))
    return { verdict: null, isProved: false, text: wordUnproved(came, ordered), cautions: [] }
  return {
    verdict: null,
    isProved: true,
    text: `By the catalogue it stands for ${ordered.partNumber} in every appliance.`,
    cautions: wordNeeds(current),
  }
}

/** Every part that may stand for the ordered one, whenever an appliance was made. */
function findStanding({ partId, replacements }: Ordered) {
  const current = followToCurrent(partId, replacements, anyDay)
  const always = replacements.filter(({ made }) => covers(made, anyDay))
  const ids = new Set([...current.chain, ...twinsOf(partId, always), ...twinsOf(current.partId, always)])
  return { ids, current }
}

function wordUnproved(came: Part, { family, partNumber }: Ordered): string {
  return came.family === family
    ? `It is of the same family, but nothing on record says that it may always stand for ${partNumber}.`
    : `It is another kind of part than ${partNumber}.`
}

function wordNeeds({ alsoNeeds }: CurrentPart): string[] {
  return alsoNeeds.length === 0 ? [] : [`Whoever fits it also needs ${alsoNeeds.join(', ')}.`]
}
