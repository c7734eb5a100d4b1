import type { Reason } from '../../shared-schemas/fit-check.ts'
import type { FitDecision } from './decide-fit.ts'
import { endSentence } from './note-records.ts'
import type { KitWith, PartDossier } from './part-dossier.ts'
import { gatherTogether, type Together } from './replace-together.ts'

/** What is replaced together with the part, and in which kits it comes too. The kits decide nothing. */
export function wordTogether(dossier: PartDossier, decision: FitDecision): Reason[] {
  const part = decision.current === null ? undefined : dossier.parts.get(decision.current)
  if (part === undefined) return []
  const isYes = decision.verdict === 'fits' || decision.verdict === 'fits-with-changes'
  return [
    ...gatherTogether(decision.answers).map(one => ({
      code: 'replaced-together',
      text: wordCompanion(one, part.partNumber),
      source: 'catalogue, replaced together',
    })),
    ...(isYes ? (dossier.kitsWith.get(part.partId) ?? []) : []).slice(0, mostKits).map(kit => ({
      code: 'comes-in-kit',
      text: wordKit(kit, part.partNumber),
      source: 'catalogue, kits',
    })),
  ]
}

const mostKits = 3

/** `Replace both together: 2 of D7 (dampers wear alike).` */
export function wordCompanion({ partNumber, quantity, why, from }: Together, part: string): string {
  const reason = why === null ? '' : ` (${why})`
  if (partNumber === part) {
    const all = quantity === 2 ? 'both' : 'all'
    return endSentence(`Replace ${all} together: ${quantity} of ${part}${reason}`)
  }
  const pieces = quantity === 1 ? partNumber : `${quantity} of ${partNumber}`
  const kit = from === 'in-kit' ? ` ${quantity === 1 ? 'It comes' : 'They come'} in this kit.` : ''
  return `${pieces} ${quantity === 1 ? 'is' : 'are'} replaced together with ${part}${reason}.${kit}`
}

function wordKit({ partNumber: kit, contents }: KitWith, part: string): string {
  const others = contents.map(({ partNumber }) => partNumber).filter(number => number !== part)
  const more = others.length > mostContents ? ` and ${others.length - mostContents} more` : ''
  const besides = others.length === 0 ? '' : ` (with ${others.slice(0, mostContents).join(', ')}${more})`
  return `${part} also comes in kit ${kit}${besides}.`
}

const mostContents = 5
