/** Characters that are taken for each other when a number is copied by hand or off a worn plate: common practice. */
const lookalikes: Readonly<Record<string, string>> = {
  O: '0',
  Q: '0',
  D: '0',
  I: '1',
  L: '1',
  Z: '2',
  S: '5',
  G: '6',
  B: '8',
}

/** Known numbers by how they look, to find one that was written with a letter for a figure. */
export class FoldedNumbers {
  readonly #known: ReadonlyMap<string, unknown>
  readonly #show: (key: string) => string
  #keysOfFold: ReadonlyMap<string, readonly string[]> | undefined

  /** `known` by their keys; `show` gives the number of a key as it is written. */
  constructor(known: ReadonlyMap<string, unknown>, show: (key: string) => string) {
    this.#known = known
    this.#show = show
  }

  /** The one known number that looks like this one; undefined where there is none, or several. */
  findOnlyLike(key: string): string | undefined {
    this.#keysOfFold ??= Map.groupBy(this.#known.keys(), fold)
    const alike = this.#keysOfFold.get(fold(key)) ?? []
    const [only] = alike
    return alike.length === 1 && only !== undefined ? this.#show(only) : undefined
  }
}

function fold(key: string): string {
  return key.replaceAll(/[OQDILZSGB]/g, character => lookalikes[character] ?? character)
}
