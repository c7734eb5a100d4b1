import type {
  ModelFacts,
  PartDossier,
  PartFacts,
  Replacement,
  Statement,
} from '../../../../electron/fit-check/part-dossier.ts'

/**
 * A second, deliberately naive reading of the rules, for one appliance of which everything is known. It shares only
 * types with the program: it walks every replacement step by step, compares dates as numbers and serials as small
 * whole numbers, and enumerates nothing cleverly.
 */
export interface ConcreteAppliance {
  readonly model: ModelFacts
  readonly day: number
  readonly serial: number
  /** By attribute: what the appliance has, and whether anybody stated or measured it. */
  readonly has: ReadonlyMap<string, { readonly value: string; readonly stated: boolean }>
}

export interface NaiveAnswer {
  readonly outcome: 'yes' | 'no' | 'no-record'
  readonly sold: string
  readonly needs: string
}

export function judgeNaively(dossier: PartDossier, appliance: ConcreteAppliance): NaiveAnswer {
  const valid = dossier.replacements.filter(
    r => r.made.first <= appliance.day && appliance.day <= r.made.last,
  )
  const walked = walkToSold(dossier.asked, dossier, valid)
  const { part } = walked
  const said = dossier.statements.filter(s => appliance.model.termsIds.has(s.termsId))
  const holds = (s: Statement): boolean =>
    s.made.first <= appliance.day &&
    appliance.day <= s.made.last &&
    (s.serial === null ||
      (Number(s.serial.from ?? -1) <= appliance.serial && appliance.serial <= Number(s.serial.to ?? 1e9)))

  const twins = sameAs(part.partId, valid)
  const about = (ids: number[]) => said.filter(s => s.partId !== null && ids.includes(s.partId))
  const ofTwins = about(twins)
  const barredHere = ofTwins.filter(s => s.says === 'excludes' && holds(s))
  const before = allBefore(part.partId, valid)
  const answer = (outcome: NaiveAnswer['outcome']): NaiveAnswer => ({ outcome, sold: '', needs: '' })
  const checked = (carrying: Statement[], needs: string[], onFamily: boolean): NaiveAnswer => {
    if (!attributesAllow(dossier, part, appliance, onFamily)) return answer('no')
    const same = before.map(b => b.id)
    const bought = buyBesides(dossier, part, same, countPieces(carrying), [...walked.needs, ...needs])
    return { outcome: 'yes', sold: part.partNumber, needs: bought.sort().join() }
  }

  if (barredHere.some(s => s.position === null)) return answer('no')
  const barred = barredHere.map(s => s.position)
  const allowed = (some: Statement[], not: (string | null)[]) =>
    some.filter(s => s.says === 'includes' && holds(s) && !not.includes(s.position))
  const listed = allowed(ofTwins, barred)
  if (listed.length > 0) return checked(listed, [], false)

  const older = before.filter(b => !twins.includes(b.id))
  const inherited = older
    .filter(b => allowed(about([b.id]), barred).length > 0)
    .sort((a, b) => costOf(walked.needs, a.needs).localeCompare(costOf(walked.needs, b.needs)))
  if (inherited[0])
    return checked(allowed(about(inherited.map(b => b.id)), barred), inherited[0].needs, false)
  if (ofTwins.some(s => s.says === 'includes' && !holds(s))) return answer('no')

  const ofFamily = said.filter(s => s.familyId === part.familyId)
  const familyBars = ofFamily.filter(s => s.says === 'excludes' && holds(s))
  if (familyBars.some(s => s.position === null)) return answer('no')
  const allBarred = [...barred, ...familyBars.map(s => s.position)]
  const onWord = allowed(ofFamily, allBarred)
  if (onWord.length > 0) {
    if (dossier.families.get(part.familyId)?.safetyDevice) return answer('no-record')
    return checked(onWord, [], true)
  }
  if (barredHere.length + familyBars.length > 0) return answer('no')
  const tooNarrow = [...ofFamily, ...older.flatMap(b => about([b.id]))]
  return answer(tooNarrow.some(s => s.says === 'includes' && !holds(s)) ? 'no' : 'no-record')
}

/** How many further numbers stand on the bill, then which: the shortest bill sorts first. */
function costOf(needed: string[], besides: string[]): string {
  const bill = [...new Set([...needed, ...besides])].sort()
  return `${String(bill.length).padStart(3, '0')} ${bill.join()}`
}

/** Left and right are two pieces; what names no place is the whole. Where nobody counts, it is one. */
function countPieces(carrying: Statement[]): number {
  let pieces = 1
  let placed = 0
  for (const place of new Set(carrying.map(s => s.position))) {
    const counts = carrying.filter(s => s.position === place).map(s => s.quantity ?? 1)
    if (place === null) pieces = Math.max(pieces, ...counts)
    else placed += Math.max(...counts)
  }
  return Math.max(pieces, placed)
}

/** What is on the bill besides the part: the needs of its replacement, and whatever goes with it, but for what its bag holds. */
function buyBesides(
  dossier: PartDossier,
  part: PartFacts,
  same: number[],
  pieces: number,
  needs: string[],
): string[] {
  const inBag = (number: string) =>
    (dossier.contents.get(part.partId) ?? []).find(c => c.partNumber === number)?.quantity ?? 0
  const bill = new Set(needs.filter(number => inBag(number) === 0))
  for (const id of same)
    for (const [of, list] of dossier.replacedTogether)
      for (const with_ of Number(of) === id ? list : []) {
        if (same.includes(with_.partId)) {
          if (with_.quantity > 1 && with_.quantity > pieces) bill.add(part.partNumber)
        } else if (with_.quantity > inBag(with_.partNumber)) bill.add(with_.partNumber)
      }
  return [...bill]
}

function walkToSold(asked: PartFacts, dossier: PartDossier, valid: Replacement[]) {
  let part = asked
  const needs: string[] = []
  for (let steps = 0; steps < 50; steps++) {
    const here = sameAs(part.partId, valid)
    const onward = here.flatMap(id => valid.filter(r => r.way === 'one' && r.old === id))[0]
    if (!onward) break
    needs.push(...onward.alsoNeeds)
    part = dossier.parts.get(onward.new) ?? part
  }
  return { part, needs }
}

function sameAs(id: number, valid: Replacement[]): number[] {
  const found = [id]
  let grew = true
  while (grew) {
    grew = false
    for (const at of [...found])
      for (const r of valid) {
        if (r.way !== 'both') continue
        const other = Number(r.old) === at ? Number(r.new) : Number(r.new) === at ? Number(r.old) : at
        if (!found.includes(other)) {
          found.push(other)
          grew = true
        }
      }
  }
  return found
}

/** Every way back, however long, each part with the least that any way needs. */
function allBefore(id: number, valid: Replacement[]): { id: number; needs: string[] }[] {
  const ways: { id: number; needs: string[]; trail: number[] }[] = [{ id, needs: [], trail: [id] }]
  for (let at = 0; at < ways.length; at++) {
    const way = ways[at]
    if (!way) break
    for (const r of valid) {
      const back =
        Number(r.new) === way.id
          ? Number(r.old)
          : r.way === 'both' && Number(r.old) === way.id
            ? Number(r.new)
            : undefined
      if (back === undefined || way.trail.includes(back)) continue
      const asked = Number(r.new) === way.id ? r.alsoNeeds : []
      ways.push({ id: back, needs: [...new Set([...way.needs, ...asked])], trail: [...way.trail, back] })
    }
  }
  const least = new Map<number, string[]>()
  for (const way of ways) {
    const known = least.get(way.id)
    if (!known || way.needs.length < known.length) least.set(way.id, way.needs)
  }
  return [...least].map(([id, needs]) => ({ id, needs }))
}

function attributesAllow(
  dossier: PartDossier,
  part: PartFacts,
  appliance: ConcreteAppliance,
  onFamily: boolean,
): boolean {
  const family = dossier.families.get(part.familyId)
  return (family?.attributes ?? []).every(rule => {
    const offered = part.attributes.get(rule.attribute)
    const has = appliance.has.get(rule.attribute)
    if (offered === undefined || has === undefined || offered === has.value) return true
    if (has.stated || rule.attribute === 'volts') return false
    return !(onFamily && family?.differing.has(rule.attribute))
  })
}
