/** Sums of weighted products of a least-squares problem: of the columns with each other, and of each with what is sought. */
export interface NormalEquations {
  readonly products: readonly (readonly number[])[]
  readonly sought: readonly number[]
}

/**
 * The weights, none below 0, with the least squared error, drawn towards `usual` as by `strength` times what the data say:
 * 0 hears the data alone. By coordinate descent, which cannot miss: the error is convex and the bounds are apart.
 */
export function solveNonnegative(
  { products, sought }: NormalEquations,
  { usual, strength }: { readonly usual: readonly number[]; readonly strength: number },
): number[] {
  const weights = [...usual]
  for (let sweep = 0; sweep < mostSweeps; sweep++) {
    let moved = 0
    for (const [at, row] of products.entries()) {
      const own = row[at] ?? 0
      if (own <= 0) continue
      const others = row.reduce(
        (sum, product, to) => (to === at ? sum : sum + product * (weights[to] ?? 0)),
        0,
      )
      const drawn = strength * own
      const best = Math.max(0, ((sought[at] ?? 0) - others + drawn * (usual[at] ?? 0)) / (own + drawn))
      moved = Math.max(moved, Math.abs(best - (weights[at] ?? 0)))
      weights[at] = best
    }
    if (moved < 1e-9) return weights
  }
  return weights
}

const mostSweeps = 2_000
