import type { OnOrder } from '../../shared-schemas/order-sheets.ts'
import type { Movement } from '../../shared-schemas/stock-ledger.ts'

/** A moment as people read it, to the minute, by the clock of the shop. */
export function wordMoment(moment: string): string {
  const at = new Date(moment)
  const two = (figure: number) => String(figure).padStart(2, '0')
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}:${two(at.getMinutes())}`
}

/** A movement in one line: how many, from where to where. */
export function wordMovement({ quantity, partNumber, from, to }: Movement): string {
  return `${quantity} × ${partNumber} from ${from} to ${to}`
}

export function wordPieces(pieces: number): string {
  return `${pieces} ${pieces === 1 ? 'piece' : 'pieces'}`
}

/** What is on order of one part, sheet by sheet. */
export function wordOnOrder(rows: readonly OnOrder[]): string {
  const sheets = rows.map(
    ({ quantity, number, supplier, sentAt }) =>
      `${quantity} on ${number} from ${supplier}, sent ${sentAt.slice(0, 10)}`,
  )
  return sheets.length === 0 ? 'None on order.' : `On order: ${sheets.join('; ')}.`
}
