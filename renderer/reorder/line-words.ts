import type { LeftOutWhy, ProposedLine } from '../../shared-schemas/proposal.ts'
import type { Bucket } from '../../shared-schemas/stock-levels.ts'

/** How a line comes about, sentence by sentence: what there is, what is asked for, how long it takes, and what follows. */
export function wordArithmetic(
  line: ProposedLine,
  { supplierName, bucket, reviewDays }: { supplierName: string; bucket: Bucket; reviewDays: number },
): string[] {
  return [
    wordPosition(line),
    wordDemand(line, bucket),
    wordLeadTime(line, supplierName, reviewDays),
    wordNeed(line),
    wordService(line),
    ...line.instead.map(
      ({ quantity, partNumber, kind, isDead }) =>
        `${pieces(quantity)} of ${partNumber} (${kind}${isDead ? ', not asked for in two years' : ''}) in the shop: used first.`,
    ),
  ]
}

function wordPosition({ position }: ProposedLine): string {
  const { onShelf, reserved, vanSpare, vanShort, onOrder, onSheets, available } = position
  const said = [
    `In the shop ${onShelf}`,
    ...(reserved > 0 ? [`kept for or awaited by jobs and customers ${reserved}`] : []),
    ...(vanSpare > 0 ? [`to be brought back from vans ${vanSpare}`] : []),
    ...(vanShort > 0 ? [`missing in vans ${vanShort}`] : []),
    `on order ${onOrder}`,
    ...(onSheets > 0 ? [`on sheets not sent yet ${onSheets}`] : []),
  ]
  return `${said.join(', ')}: ${available < 0 ? `${-available} owed` : `${available} available`}.`
}

function wordDemand({ level }: ProposedLine, bucket: Bucket): string {
  const { meanPerBucket, deviationPerBucket, demandClass } = level
  if (demandClass === 'none') return 'Nobody has asked for it so far.'
  return `About ${figure(meanPerBucket)} a ${bucket} are asked for, give or take ${figure(deviationPerBucket)}; ${classWords[demandClass]}.`
}

const classWords: Readonly<Record<Exclude<ProposedLine['level']['demandClass'], 'none'>, string>> = {
  smooth: 'often, and in like numbers',
  intermittent: 'now and then, and in like numbers',
  erratic: 'often, and in very different numbers',
  lumpy: 'now and then, and in very different numbers',
}

function wordLeadTime({ level }: ProposedLine, supplierName: string, reviewDays: number): string {
  const days = `${figure(level.leadDays)} ${level.leadDays === 1 ? 'day' : 'days'}`
  return `${supplierName} takes ${days} (${leadWords[level.leadTimeFrom]}), and the next order is ${reviewDays} days off.`
}

const leadWords: Readonly<Record<ProposedLine['level']['leadTimeFrom'], string>> = {
  given: 'as asked',
  deliveries: 'by its deliveries',
  supplier: 'as it says',
  assumed: 'assumed, since nothing is known',
}

function wordNeed({ level, position, need, quantity, pack, instead }: ProposedLine): string {
  const { reorderPoint, orderUpTo } = level
  const used = instead.reduce((sum, taken) => sum + taken.quantity, 0)
  const wanted =
    orderUpTo === 0
      ? `None is kept; ${pieces(need)} ${need === 1 ? 'is' : 'are'} promised.`
      : `It is ordered at ${reorderPoint} or fewer, up to ${orderUpTo}: ${orderUpTo} less ${position.available}${used > 0 ? ` less ${used} used instead` : ''}, so ${pieces(need)}.`
  if (quantity === need) return wanted
  const why = pack > 1 ? `in packs of ${pack}, or for a lower price` : 'for a lower price, or carriage'
  return `${wanted} Ordered ${quantity}: ${why}.`
}

function wordService({ level, shortWithout }: ProposedLine): string {
  return `At these levels ${percent(level.expectedFillRate)} of the pieces asked for are there at once, and nothing is short in ${percent(level.cycleService)} of the times between two deliveries. Without this order about ${figure(shortWithout)} would be short.`
}

/** What a person calls the reasons, and what to make of them. */
export const leftOutWords: Readonly<Record<LeftOutWhy, string>> = {
  'no-offer': 'Nobody offers it',
  'minimum-order': 'Below a minimum order',
  budget: 'Beyond the budget',
  'not-worth-it': 'Dearer than waiting',
  covered: 'Used up from the shelf instead',
  'on-order': 'Coming already',
  dead: 'Not asked for in two years',
}

export function pieces(number: number): string {
  return `${number} ${number === 1 ? 'piece' : 'pieces'}`
}

export function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`
}

/** Two decimals below one, one below ten, none above. */
export function figure(number: number): string {
  const size = Math.abs(number)
  const decimals = size >= 10 || Number.isInteger(number) ? 0 : size >= 1 ? 1 : 2
  return number.toFixed(decimals)
}
