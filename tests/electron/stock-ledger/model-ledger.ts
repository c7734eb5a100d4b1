import type { Problem } from '../../../shared-schemas/problem.ts'
import { ledgerPlaces } from './ledger-catalogue.ts'

/** What a person may do with the book. Movements and reservations are named by how manieth they are. */
export type LedgerCommand =
  | {
      readonly do: 'record'
      readonly part: string
      readonly quantity: number
      readonly from: string
      readonly to: string
      readonly reference: string | undefined
      readonly usedBeforeBooked: boolean
      readonly takeReserved: boolean
    }
  | { readonly do: 'reverse'; readonly which: number }
  | {
      readonly do: 'reserve'
      readonly part: string
      readonly place: string
      readonly quantity: number
      readonly reference: string
    }
  | { readonly do: 'release'; readonly which: number }

interface ModelMovement {
  readonly part: string
  readonly quantity: number
  readonly from: string
  readonly to: string
  readonly isReversal: boolean
  isReversed: boolean
}

interface ModelReservation {
  readonly part: string
  readonly place: string
  readonly reference: string
  quantity: number
  isOpen: boolean
}

const arrives = new Set(['supplier', 'customer', 'job'])
const leaves = new Set(['supplier', 'customer', 'job', 'scrap'])
const isPlace = (word: string) => (ledgerPlaces as readonly string[]).includes(word)

/** The book as plain numbers, by the rules as they are told to staff: written apart from the program, to hold it to. */
export class ModelLedger {
  readonly onHand = new Map<string, number>()
  readonly movements: ModelMovement[] = []
  readonly reservations: ModelReservation[] = []

  /** The problem's code, or nothing where it is done. */
  act(command: LedgerCommand): Problem['code'] | undefined {
    switch (command.do) {
      case 'record':
        return this.#record(command)
      case 'reverse':
        return this.#reverse(command.which)
      case 'reserve':
        return this.#reserve(command)
      case 'release': {
        const found = this.reservations[command.which]
        if (found === undefined || !found.isOpen) return 'reservation-not-open'
        found.isOpen = false
        return undefined
      }
    }
  }

  at(place: string, part: string): number {
    return this.onHand.get(`${place} ${part}`) ?? 0
  }

  #record(command: LedgerCommand & { do: 'record' }): Problem['code'] | undefined {
    const { part, quantity, from, to, reference } = command
    const [isFromPlace, isToPlace] = [isPlace(from), isPlace(to)]
    const isKnownWay =
      isFromPlace && isToPlace ? from !== to : isFromPlace ? leaves.has(to) : isToPlace && arrives.has(from)
    if (!isKnownWay) return 'no-such-movement'
    if ([from, to].some(place => place === 'job' || place === 'customer') && reference === undefined)
      return 'reference-needed'
    if (isFromPlace) {
      const here = this.at(from, part)
      if (quantity > here && !command.usedBeforeBooked) return 'not-enough-on-hand'
      const free = here - this.#kept(from, part, reference)
      if (quantity <= here && quantity > free && !command.takeReserved) return 'kept-for-others'
    }
    this.#move({ part, quantity, from, to, isReversal: false, isReversed: false })
    if (isFromPlace && reference !== undefined) this.#take(from, part, reference, quantity)
    return undefined
  }

  #reverse(which: number): Problem['code'] | undefined {
    const found = this.movements[which]
    if (found === undefined) return 'movement-not-found'
    if (found.isReversal) return 'movement-is-reversal'
    if (found.isReversed) return 'movement-reversed-already'
    found.isReversed = true
    this.#move({ ...found, from: found.to, to: found.from, isReversal: true, isReversed: false })
    return undefined
  }

  #reserve({
    part,
    place,
    quantity,
    reference,
  }: LedgerCommand & { do: 'reserve' }): Problem['code'] | undefined {
    if (quantity > this.at(place, part) - this.#kept(place, part, undefined)) return 'kept-for-others'
    this.reservations.push({ part, place, quantity, reference, isOpen: true })
    return undefined
  }

  #move(movement: ModelMovement): void {
    this.movements.push(movement)
    for (const [place, sign] of [
      [movement.from, -1],
      [movement.to, 1],
    ] as const)
      if (isPlace(place))
        this.onHand.set(`${place} ${movement.part}`, this.at(place, movement.part) + sign * movement.quantity)
  }

  #kept(place: string, part: string, butFor: string | undefined): number {
    return this.reservations
      .filter(one => one.isOpen && one.place === place && one.part === part && one.reference !== butFor)
      .reduce((sum, { quantity }) => sum + quantity, 0)
  }

  #take(place: string, part: string, reference: string, quantity: number): void {
    let left = quantity
    for (const one of [...this.reservations]) {
      if (!one.isOpen || one.place !== place || one.part !== part || one.reference !== reference || left <= 0)
        continue
      one.isOpen = false
      if (one.quantity > left) this.reservations.push({ ...one, quantity: one.quantity - left, isOpen: true })
      left -= one.quantity
    }
  }
}
