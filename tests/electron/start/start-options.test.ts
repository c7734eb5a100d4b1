import { expect, test } from 'vitest'
import { hasDisplay } from '../../../electron/start/open-browser.ts'
import { readEnd } from '../../../electron/start/open-window.ts'
import { readStartOptions } from '../../../electron/start/start-options.ts'

test('options are read, and what is left out has its usual value', () => {
  expect(readStartOptions(['--no-open', '--port', '4100', '--file', 'a.sqlite'])).toEqual({
    help: false,
    browser: false,
    fetchElectron: false,
    noOpen: true,
    port: 4100,
    file: 'a.sqlite',
  })
})

test.each<[string[], RegExp]>([
  [['--bowser'], /no option --bowser. Did you mean --browser\?/],
  [['--port'], /--port needs a number after it/],
  [['--port', '--no-open'], /--port needs a number after it/],
  [['--port', 'http'], /--port takes a whole number; “http” is none/],
  [['--port', '70000'], /up to 65535/],
  [['--no-open=yes'], /--no-open takes no value/],
  [['shop.sqlite'], /does not know what to do with “shop.sqlite”/],
])('%j is refused in one line', (argv, line) => {
  expect(() => readStartOptions(argv)).toThrow(line)
})

test('on Linux a display is said by the environment', () => {
  expect(hasDisplay('linux', {})).toBe(false)
  expect(hasDisplay('linux', { DISPLAY: ':0' })).toBe(true)
  expect(hasDisplay('linux', { WAYLAND_DISPLAY: 'wayland-0' })).toBe(true)
  expect(hasDisplay('win32', {})).toBe(true)
})

// Exit statuses 126 and 127: POSIX.1-2024, Shell Command Language, 2.8.2: found but not executable; not found. A
// dynamic loader that misses a library ends with 127 as well (common practice).
test('a program that could not begin is told from one that was closed', () => {
  expect(readEnd(127, null)).toEqual({ kind: 'never-opened', why: 'exit code 127' })
  expect(readEnd(null, 'SIGTRAP')).toEqual({ kind: 'never-opened', why: 'SIGTRAP' })
  expect(readEnd(0, null)).toEqual({ kind: 'closed', code: 0 })
  expect(readEnd(1, null)).toEqual({ kind: 'closed', code: 1 })
})
