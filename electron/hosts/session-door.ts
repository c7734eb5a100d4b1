import { createHash, timingSafeEqual } from 'node:crypto'

/** What a request shows at the door. */
export interface Knock {
  readonly host: string | undefined
  readonly origin: string | undefined
  readonly cookie: string | undefined
}

/** `misdirected`: for another host's name; `foreign`: sent by another site's page; `stranger`: without the session's cookie. */
export type Turned = 'misdirected' | 'foreign' | 'stranger'

export interface DoorSecrets {
  readonly token: string
  readonly session: string
}

/**
 * Lets in only the browser that was given the one-time address. The host's name is checked because a foreign site can
 * point a name of its own at 127.0.0.1; the cookie, because any program of this machine can reach the port.
 */
export class SessionDoor {
  readonly #port: number
  readonly #session: string
  #token: string | undefined

  constructor(port: number, { token, session }: DoorSecrets) {
    this.#port = port
    this.#token = token
    this.#session = session
  }

  /** Why a request with a session's rights must be turned away, or nothing. */
  turnAway(knock: Knock): Turned | undefined {
    return this.turnAwayForeign(knock) ?? (this.#holdsSession(knock.cookie) ? undefined : 'stranger')
  }

  /** The checks that hold before any session exists. */
  turnAwayForeign({ host, origin }: Knock): Turned | undefined {
    if (!this.#ownHosts().includes(host ?? '')) return 'misdirected'
    const ownOrigins = this.#ownHosts().map(own => `http://${own}`)
    return origin === undefined || ownOrigins.includes(origin) ? undefined : 'foreign'
  }

  /** Trades the one-time token for the session's cookie. A token that was used, or any other, gets nothing. */
  exchange(shown: string): string | undefined {
    if (this.#token === undefined || !isSame(shown, this.#token)) return undefined
    this.#token = undefined
    return `${this.#cookieName()}=${this.#session}; Path=/; HttpOnly; SameSite=Strict`
  }

  /** Gives out another one-time token; an unused earlier one dies. */
  renewToken(token: string): void {
    this.#token = token
  }

  #ownHosts(): string[] {
    return [`127.0.0.1:${this.#port}`, `localhost:${this.#port}`]
  }

  /** Cookies know no ports, so that two shops served at once each need a name of their own. */
  #cookieName(): string {
    return `tallyplate-${this.#port}`
  }

  #holdsSession(cookie: string | undefined): boolean {
    const shown = (cookie ?? '').split(';').map(pair => pair.trim().split('='))
    return shown.some(([name, value]) => name === this.#cookieName() && isSame(value ?? '', this.#session))
  }
}

/** Compares in a time that tells nothing about where two secrets differ. */
function isSame(shown: string, secret: string): boolean {
  return timingSafeEqual(digest(shown), digest(secret))
}

function digest(text: string): Buffer {
  return createHash('sha256').update(text).digest()
}
