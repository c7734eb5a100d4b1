import type { Reply } from '../../shared-schemas/request.ts'

/** A browser's side of the loopback host: the cookie that it was given, and how it asks. */
export interface LoopbackDoor {
  readonly origin: string
  readonly cookie: string
  readonly ask: (name: string, input: unknown) => Promise<{ readonly status: number; readonly reply: Reply }>
}

/** Opens the one-time address, as a browser does, and keeps the cookie. */
export async function enterLoopback(address: string): Promise<LoopbackDoor> {
  const { origin } = new URL(address)
  const entered = await fetch(address, { redirect: 'manual' })
  const cookie = entered.headers.get('set-cookie')?.split(';')[0]
  if (cookie === undefined) throw new Error(`the address let nobody in: ${entered.status}`)
  return {
    origin,
    cookie,
    ask: async (name, input) => {
      const response = await fetch(`${origin}/ask/${name}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', origin, cookie },
        body: JSON.stringify(input),
      })
      return { status: response.status, reply: (await response.json()) as Reply }
    },
  }
}
