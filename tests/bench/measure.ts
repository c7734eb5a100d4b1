/** How long each of some pieces of work took, in milliseconds. */
export interface Timings {
  readonly p50: number
  readonly p95: number
  readonly worst: number
}

/** Runs the work for each item, one at a time: once for warming up, then timed. */
export async function timeEach<Item>(
  items: readonly Item[],
  work: (item: Item) => unknown,
): Promise<Timings> {
  for (const item of items) await work(item)
  const took: number[] = []
  for (const item of items) {
    const start = performance.now()
    await work(item)
    took.push(performance.now() - start)
  }
  return summarise(took)
}

export function summarise(took: readonly number[]): Timings {
  const sorted = took.toSorted((one, other) => one - other)
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN
  return { p50: at(0.5), p95: at(0.95), worst: at(1) }
}

/** One line: what was measured, the figures, what was wanted, and a reference from the same run. */
export function printTimings(
  what: string,
  { p50, p95, worst }: Timings,
  { wanted, reference }: { wanted?: string; reference?: string } = {},
): void {
  const figures = `p50 ${written(p50)}, p95 ${written(p95)}, worst ${written(worst)} ms`
  console.log([`${what}: ${figures}`, wanted && `wanted ${wanted}`, reference].filter(Boolean).join('; '))
}

export function written(milliseconds: number): string {
  return milliseconds < 10 ? milliseconds.toFixed(2) : milliseconds.toFixed(0)
}
