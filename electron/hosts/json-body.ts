import type { IncomingMessage } from 'node:http'

export type JsonBody =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly status: 400 | 413 | 415; readonly why: string }

/** Far more than any question needs. */
const mostBytes = 1024 * 1024

/** The JSON that a request carries, or why it is not taken. */
export async function readJsonBody(request: IncomingMessage): Promise<JsonBody> {
  // A page of another site can send any of the three form types without asking first; this one it cannot.
  if (!/^application\/json(;|$)/i.test(request.headers['content-type'] ?? ''))
    return { ok: false, status: 415, why: 'the content type is not application/json' }
  const chunks: Buffer[] = []
  let bytes = 0
  // Kept open when reading stops early, or the answer that says why could not be sent.
  for await (const chunk of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
    bytes += chunk.length
    if (bytes > mostBytes)
      return { ok: false, status: 413, why: `the question is longer than ${mostBytes} bytes` }
    chunks.push(chunk)
  }
  try {
    return { ok: true, value: JSON.parse(Buffer.concat(chunks).toString('utf8')) }
  } catch {
    return { ok: false, status: 400, why: 'the question is not JSON' }
  }
}
