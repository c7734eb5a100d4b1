/** The exact sum of decimals such as `12.50`, with at least two decimals. */
export function addAmounts(amounts: readonly string[]): string {
  const places = Math.max(2, ...amounts.map(amount => amount.split('.')[1]?.length ?? 0))
  const sum = amounts.reduce((all, amount) => all + asUnits(amount, places), 0n)
  const digits = String(sum < 0n ? -sum : sum).padStart(places + 1, '0')
  return `${sum < 0n ? '-' : ''}${digits.slice(0, -places)}.${digits.slice(-places)}`
}

function asUnits(amount: string, places: number): bigint {
  const [whole = '0', fraction = ''] = amount.split('.')
  return BigInt(whole + fraction.padEnd(places, '0'))
}
