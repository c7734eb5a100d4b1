import type { Transport } from './transport.ts'

/** The one thing the preload script puts into the page. */
export interface TallyplateBridge {
  readonly ask: Transport
}

declare global {
  interface Window {
    readonly tallyplate?: TallyplateBridge
  }
}

export function isDesktop(): boolean {
  return window.tallyplate !== undefined
}

/** Asks through Electron's bridge. A call that fails on the way means that the program behind the window is gone. */
export const askDesktop: Transport = async (name, input) => {
  try {
    if (window.tallyplate === undefined) throw new Error('the window has no bridge')
    return await window.tallyplate.ask(name, input)
  } catch {
    return { ok: false, problem: { code: 'program-not-running' } }
  }
}
