import type { CDPSession, Page } from 'playwright-core'

/**
 * A scanner on a keyboard wedge: trusted key events five milliseconds apart by their own stamps, however busy the machine
 * is, and Enter at the end. Shift goes with capitals, and the separator of a GS1 code is Control and `]`.
 */
export async function scanWith(page: Page, code: string, millisecondsApart = 5): Promise<void> {
  const session = await sessionOf(page)
  let stamp = Date.now() / 1000
  const sent: Promise<unknown>[] = []
  const send = (type: 'keyDown' | 'keyUp' | 'rawKeyDown', key: string, more: object = {}) =>
    sent.push(session.send('Input.dispatchKeyEvent', { type, key, timestamp: stamp, ...more }))
  for (const character of code) {
    stamp += millisecondsApart / 1000
    if (character === '\u001d') {
      send('rawKeyDown', ']', { modifiers: 2 })
      send('keyUp', ']', { modifiers: 2 })
      continue
    }
    const isCapital = /[A-Z]/.test(character)
    if (isCapital) send('rawKeyDown', 'Shift')
    send('keyDown', character, { text: character, ...(isCapital ? { modifiers: 8 } : {}) })
    send('keyUp', character)
  }
  stamp += millisecondsApart / 1000
  send('keyDown', 'Enter', { text: '\r', windowsVirtualKeyCode: 13 })
  send('keyUp', 'Enter', { windowsVirtualKeyCode: 13 })
  await Promise.all(sent)
}

const sessions = new WeakMap<Page, Promise<CDPSession>>()

function sessionOf(page: Page): Promise<CDPSession> {
  const known = sessions.get(page) ?? page.context().newCDPSession(page)
  sessions.set(page, known)
  return known
}
