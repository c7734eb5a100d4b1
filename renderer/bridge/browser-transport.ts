import type { Reply } from '../../shared-schemas/request.ts'
import type { Transport } from './transport.ts'

/** Asks the browser host that served this page. The cookie it set goes along by itself. */
export const askOverLoopback: Transport = async (name, input) => {
  try {
    const response = await fetch(`/ask/${name}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(input),
      credentials: 'same-origin',
    })
    // Whoever answers these three did not let the question in; there is no reply in the body.
    if ([401, 403, 421].includes(response.status))
      return { ok: false, problem: { code: 'page-not-admitted' } }
    return (await response.json()) as Reply
  } catch {
    return { ok: false, problem: { code: 'program-not-running' } }
  }
}
