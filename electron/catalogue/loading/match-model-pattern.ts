/** Does a listed number stand for several: `*` for any characters, none included, `?` for exactly one? */
export function hasWildcard(listed: string): boolean {
  return /[*?]/.test(listed)
}

/** The models of one brand, by key, that a listed number with wildcards means. Separators count as little as in any number. */
export function matchModelPattern(listed: string, models: ReadonlyMap<string, number>): number[] {
  const expression = patternExpression(listed)
  const matched: number[] = []
  for (const [key, modelId] of models) if (expression.test(key)) matched.push(modelId)
  return matched
}

/** The expression is made of letters, digits, `.` and `.*` alone, whatever was listed. */
export function patternExpression(listed: string): RegExp {
  const key = listed
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}*?]/gu, '')
  return new RegExp(`^${key.replaceAll('?', '.').replace(/\*+/g, '.*')}$`, 'u')
}
