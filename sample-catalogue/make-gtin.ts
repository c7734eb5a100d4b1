/**
 * A GTIN-13 that can never be on a real product: prefixes 20 to 29 are restricted circulation numbers,
 * kept by the GS1 General Specifications for use inside a company.
 */
export function makeInStoreGtin(serialNumber: number): string {
  const prefix = 20 + (serialNumber % 10)
  const body = `${prefix}${String(serialNumber).padStart(10, '0')}`
  return body + gtinCheckDigit(body)
}

/** GS1 General Specifications: weights 3 and 1 in turn from the right, up to the next multiple of ten. */
export function gtinCheckDigit(body: string): number {
  let sum = 0
  for (let index = 0; index < body.length; index += 1) {
    const fromRight = body.length - index
    sum += Number(body[index]) * (fromRight % 2 === 1 ? 3 : 1)
  }
  return (10 - (sum % 10)) % 10
}
