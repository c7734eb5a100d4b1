import { expect, test } from 'vitest'
import { type Knock, SessionDoor, type Turned } from '../../../electron/hosts/session-door.ts'

const cookie = 'tallyplate-4100=the-session'
const own: Knock = { host: '127.0.0.1:4100', origin: 'http://127.0.0.1:4100', cookie }

function check(given: Partial<Knock>, expected: Turned | 'let in'): void {
  const door = new SessionDoor(4100, { token: 'the-token', session: 'the-session' })
  expect(door.turnAway({ ...own, ...given }) ?? 'let in').toBe(expected)
}

test.each<[string, Partial<Knock>, Turned | 'let in']>([
  ['the page that was opened by the one-time address', {}, 'let in'],
  [
    'the same under the name localhost',
    { host: 'localhost:4100', origin: 'http://localhost:4100' },
    'let in',
  ],
  ['a plain navigation, which states no origin', { origin: undefined }, 'let in'],
  ['a cookie among others', { cookie: `a=b; ${cookie}; c=d` }, 'let in'],
  ['a foreign name that leads to this machine', { host: 'shop.example:4100' }, 'misdirected'],
  ['the right name at another port', { host: '127.0.0.1:4101' }, 'misdirected'],
  ['the bare name', { host: '127.0.0.1' }, 'misdirected'],
  ['no name at all', { host: undefined }, 'misdirected'],
  ['another name of this machine', { host: '[::1]:4100' }, 'misdirected'],
  ['a page of another site', { origin: 'https://shop.example' }, 'foreign'],
  ['a page of another port', { origin: 'http://127.0.0.1:8080' }, 'foreign'],
  ['a page that hides where it is from', { origin: 'null' }, 'foreign'],
  ['our name over another scheme', { origin: 'https://127.0.0.1:4100' }, 'foreign'],
  ['no cookie', { cookie: undefined }, 'stranger'],
  ['a wrong cookie', { cookie: 'tallyplate-4100=guess' }, 'stranger'],
  ['the cookie of another port', { cookie: 'tallyplate-4101=the-session' }, 'stranger'],
  ['an empty cookie', { cookie: 'tallyplate-4100=' }, 'stranger'],
])('%s', (_title, given, expected) => check(given, expected))

test('the one-time token is good once', () => {
  const door = new SessionDoor(4100, { token: 'the-token', session: 'the-session' })
  expect(door.exchange('a-guess')).toBeUndefined()
  expect(door.exchange('the-token')).toBe(`${cookie}; Path=/; HttpOnly; SameSite=Strict`)
  expect(door.exchange('the-token')).toBeUndefined()
})

test('a new token makes the one before it void', () => {
  const door = new SessionDoor(4100, { token: 'first', session: 'the-session' })
  door.renewToken('second')
  expect(door.exchange('first')).toBeUndefined()
  expect(door.exchange('second')).toContain(cookie)
})
