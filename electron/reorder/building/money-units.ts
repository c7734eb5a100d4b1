import { Big } from 'big.js'

/** Prices have up to four decimals: in units of a ten-thousandth they are whole, and sums of them exact below 2^53. */
const perOne = new Big(10_000)

/** An amount in whole units. Refuses what would not be whole or not be exact. */
export function toUnits(amount: string): number {
  const units = new Big(amount).times(perOne)
  const whole = units.toNumber()
  if (!Number.isSafeInteger(whole) || !units.eq(whole))
    throw new Error(`an amount has up to four decimals and is below nine hundred milliards, but is ${amount}`)
  return whole
}

/** The amount as an exact decimal with at least two decimals. */
export function fromUnits(units: number): string {
  const amount = new Big(units).div(perOne)
  return amount.toFixed(Math.max(2, -leastDecimal(units)))
}

/** The power of ten of the last digit that is not nought. */
function leastDecimal(units: number): number {
  let power = -4
  for (let left = units; left !== 0 && left % 10 === 0 && power < 0; left /= 10) power += 1
  return units === 0 ? 0 : power
}
