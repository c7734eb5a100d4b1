/**
 * Runs what it is given one after another, in the order asked. Two loads in one thread must: the second, waiting for
 * the file's one writer, would hold up the very thread that the first needs to finish.
 */
export function takeTurns(): <Value>(work: () => Promise<Value>) => Promise<Value> {
  let last: Promise<unknown> = Promise.resolve()
  return work => {
    const mine = last.then(work)
    last = mine.catch(() => undefined)
    return mine
  }
}
