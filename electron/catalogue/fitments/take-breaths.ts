import { setImmediate } from 'node:timers/promises'

/** Runs long work to its end, letting others be answered some times a second, and tells how far it has come. */
export async function takeBreaths<Value>(
  work: Generator<number, Value>,
  tell: (done: number) => void = () => {},
): Promise<Value> {
  let since = performance.now()
  for (;;) {
    const { done, value } = work.next()
    if (done) return value
    if (performance.now() - since < longestMilliseconds) continue
    tell(value)
    await setImmediate()
    since = performance.now()
  }
}

/** A person notices a wait from about 100 ms on (common practice); another question may come at any moment. */
const longestMilliseconds = 25

/** Runs work that is short to its end at once. */
export function finishAtOnce<Value>(work: Generator<unknown, Value>): Value {
  for (;;) {
    const { done, value } = work.next()
    if (done) return value
  }
}
