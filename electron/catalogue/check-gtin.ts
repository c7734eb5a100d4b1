/**
 * The check digit that a GTIN of any length ends with: weights 3 and 1 in turn from the right, up to the next multiple
 * of ten (GS1 General Specifications, section 7.9). `body` is the number without it.
 */
export function gtinCheckDigit(body: string): number {
  let sum = 0
  for (let fromRight = 1; fromRight <= body.length; fromRight += 1)
    sum += Number(body[body.length - fromRight]) * (fromRight % 2 === 1 ? 3 : 1)
  return (10 - (sum % 10)) % 10
}

/** What is wrong with a GTIN, or undefined when it can be one: 8, 12, 13 or 14 digits, the last of which checks. */
export function findGtinFault(gtin: string): string | undefined {
  if (!/^(\d{8}|\d{12,14})$/.test(gtin)) return `“${gtin}” is no GTIN: it has 8, 12, 13 or 14 digits`
  const expected = gtinCheckDigit(gtin.slice(0, -1))
  if (gtin.endsWith(String(expected))) return undefined
  return `“${gtin}” is mistyped: its check digit should be ${expected}; read it again from the label`
}
