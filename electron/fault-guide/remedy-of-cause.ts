import type { FaultCause } from '../../shared-schemas/fault-guide.ts'

/**
 * What puts a cause right, as a key: the families of the part, whoever licensed the work is left to, or the cause itself
 * where no part is needed. Causes with one key are one proposal: what is bought for either is the same.
 */
export function remedyOfCause({ cause, endsIn, licensedFor, families }: FaultCause): string {
  switch (endsIn) {
    case 'part':
      return `part ${families.map(({ family }) => family).join('|')}`
    case 'licensed':
      return `licensed ${licensedFor}`
    case 'no-part':
    case 'normal':
      return `${endsIn} ${cause}`
  }
}
