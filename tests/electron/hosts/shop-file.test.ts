import path from 'node:path'
import { expect, test } from 'vitest'
import { type Machine, shopFile } from '../../../electron/hosts/shop-file.ts'

const linux: Machine = { platform: 'linux', home: '/home/ada', environment: {} }

function check(given: { named?: string; machine?: Partial<Machine> }, expected: string): void {
  expect(shopFile(given.named, { ...linux, ...given.machine })).toBe(expected)
}

test('a file that is named comes before everything', () => {
  check({ named: '/a/b.sqlite', machine: { environment: { TALLYPLATE_FILE: '/c.sqlite' } } }, '/a/b.sqlite')
})

test('TALLYPLATE_FILE comes before the data folder', () => {
  check({ machine: { environment: { TALLYPLATE_FILE: '/c.sqlite' } } }, '/c.sqlite')
  check(
    { machine: { environment: { TALLYPLATE_FILE: '' } } },
    '/home/ada/.local/share/tallyplate/shop.sqlite',
  )
})

// XDG Base Directory Specification 0.8, XDG_DATA_HOME: default $HOME/.local/share; a relative path is to be ignored.
test('on Linux the data folder follows the XDG base directories', () => {
  check({}, '/home/ada/.local/share/tallyplate/shop.sqlite')
  check({ machine: { environment: { XDG_DATA_HOME: '/data' } } }, '/data/tallyplate/shop.sqlite')
  check(
    { machine: { environment: { XDG_DATA_HOME: 'data' } } },
    '/home/ada/.local/share/tallyplate/shop.sqlite',
  )
})

test('on Windows and macOS it is where programs keep data for one user', () => {
  const local = path.join('C:', 'Users', 'ada', 'AppData', 'Local')
  check(
    { machine: { platform: 'win32', environment: { LOCALAPPDATA: local } } },
    path.join(local, 'Tallyplate', 'shop.sqlite'),
  )
  check(
    { machine: { platform: 'darwin', home: '/Users/ada' } },
    '/Users/ada/Library/Application Support/Tallyplate/shop.sqlite',
  )
})
