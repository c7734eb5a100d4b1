/** How each season of a year stands to the average of all, from its values over the years; 1 is as all others. */
export function seasonalIndices(valuesBySeason: readonly (readonly number[])[]): number[] {
  const means = valuesBySeason.map(mean)
  const average = mean(means)
  return means.map(ofSeason => ofSeason / average)
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
