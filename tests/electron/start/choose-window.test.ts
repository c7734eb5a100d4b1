import { expect, test } from 'vitest'
import { type Choice, type Circumstances, chooseWindow } from '../../../electron/start/choose-window.ts'

const desk: Circumstances = {
  wantsBrowser: false,
  wantsFetch: false,
  electron: '/e/electron',
  earlierFailure: undefined,
  isUnattended: false,
  hasDisplay: true,
  isLinuxRoot: false,
}

function check(given: Partial<Circumstances>, expected: Choice['kind'], because = /(?:)/): void {
  const choice = chooseWindow({ ...desk, ...given })
  expect(choice.kind).toBe(expected)
  if (choice.kind === 'browser') expect(choice.because).toMatch(because)
}

test('Electron opens its window where it is installed', () => check({}, 'window'))

test('--browser is obeyed though Electron is there', () =>
  check({ wantsBrowser: true }, 'browser', /--browser was given/))

test('an absent Electron is fetched once', () => check({ electron: undefined }, 'fetch'))

test('a fetch that failed is not tried again by itself, and the way to try is named', () =>
  check({ electron: undefined, earlierFailure: 'no network' }, 'browser', /no network.*--fetch-electron/))

test('--fetch-electron tries again', () =>
  check({ electron: undefined, earlierFailure: 'no network', wantsFetch: true }, 'fetch'))

test('tests and CI fetch nothing, even when asked to', () => {
  check({ electron: undefined, isUnattended: true }, 'browser', /tests or CI/)
  check({ electron: undefined, isUnattended: true, wantsFetch: true }, 'browser', /tests or CI/)
})

test('without a display neither a window nor a fetch is of use', () => {
  check({ hasDisplay: false }, 'browser', /no display/)
  check({ electron: undefined, hasDisplay: false }, 'browser', /no display/)
})

test('for root on Linux the browser is used, for the sandbox is never switched off', () => {
  check({ isLinuxRoot: true }, 'browser', /sandbox/)
  check({ isLinuxRoot: true, electron: undefined }, 'browser', /sandbox/)
})
