import { readFile } from 'node:fs/promises'
import { pageHeaders } from './content-security-policy.ts'
import { findStaticFile } from './static-files.ts'

/** Where the window's page lives: a scheme of its own, so that it shares an origin with nothing. */
export const pageScheme = 'tallyplate'
export const pageOrigin = `${pageScheme}://shop`

/** Answers one address of the window's own scheme from the built page's folder. */
export async function respondWithPage(pageFolder: string, address: string): Promise<Response> {
  const { host, pathname } = new URL(address)
  const found = host === 'shop' ? findStaticFile(pageFolder, pathname) : undefined
  const content = found && (await readFile(found.file).catch(() => undefined))
  if (found === undefined || content === undefined)
    return new Response('', { status: 404, headers: pageHeaders })
  const { contentType, cacheControl } = found
  return new Response(new Uint8Array(content), {
    headers: { ...pageHeaders, 'content-type': contentType, 'cache-control': cacheControl },
  })
}

/** Whether a frame that asks is the window's own page: the outermost frame, at our own origin. */
export function isOwnPage(frame: { readonly url: string; readonly parent: unknown } | null): boolean {
  return frame !== null && frame.parent === null && frame.url.startsWith(`${pageOrigin}/`)
}
