/** How many families there are, or how many of them the words leave. */
export function wordFamilies(
  { count, matching }: { readonly count: number; readonly matching: number },
  words: string,
): string {
  const all = `${figure.format(count)} part ${count === 1 ? 'family' : 'families'}`
  if (count === 0) return 'There are no part families yet. Load families.csv on the screen Lists.'
  if (words === '') return `${all}.`
  if (matching === 0) return `None of ${all} matches “${words}”. Type less of it.`
  return `${figure.format(matching)} of ${all} ${matching === 1 ? 'matches' : 'match'} “${words}”.`
}

const figure = new Intl.NumberFormat('en')
