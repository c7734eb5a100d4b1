/** Does a listed number, perhaps with `*` for any run of characters and `?` for exactly one, mean this model number? */
export function matchesModelPattern(pattern: string, modelNumber: string): boolean {
  return patternExpression(pattern).test(modelNumber.toUpperCase())
}

export function hasWildcard(text: string): boolean {
  return /[*?]/.test(text)
}

const compiled = new Map<string, RegExp>()

function patternExpression(pattern: string): RegExp {
  const known = compiled.get(pattern)
  if (known !== undefined) return known
  const source = pattern
    .toUpperCase()
    .replace(/[\\^$+.()|[\]{}]/g, '\\$&')
    .replaceAll('*', '.*')
    .replaceAll('?', '.')
  const expression = new RegExp(`^${source}$`, 'u')
  compiled.set(pattern, expression)
  return expression
}
