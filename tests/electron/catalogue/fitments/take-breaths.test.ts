import { expect, test } from 'vitest'
import { finishAtOnce, takeBreaths } from '../../../../electron/catalogue/fitments/take-breaths.ts'

/** Busy for so many milliseconds, told of after each. */
function* beBusy(milliseconds: number): Generator<number, string> {
  for (let done = 0; done < milliseconds; done += 1) {
    const until = performance.now() + 1
    while (performance.now() < until);
    yield done
  }
  return 'done'
}

test('others are answered while long work is under way, and are told how far it has come', async () => {
  let answered = 0
  const timer = setInterval(() => {
    answered += 1
  }, 1)
  const told: number[] = []
  expect(await takeBreaths(beBusy(200), done => told.push(done))).toBe('done')
  clearInterval(timer)
  expect(answered).toBeGreaterThan(2)
  expect(told.length).toBeGreaterThan(2)
  expect(told).toEqual(told.toSorted((one, other) => one - other))
})

test('what is thrown where it is told ends the work', async () => {
  const stop = () => {
    throw new Error('stopped')
  }
  await expect(takeBreaths(beBusy(200), stop)).rejects.toThrow('stopped')
})

test('short work is done at once', () => {
  expect(finishAtOnce(beBusy(3))).toBe('done')
})
