import path from 'node:path'

export interface StaticFile {
  readonly file: string
  readonly contentType: string
  readonly cacheControl: string
}

/** The file of the page's folder that an address means, or nothing where it leads outside or to a kind that no page needs. */
export function findStaticFile(folder: string, pathname: string): StaticFile | undefined {
  const asked = decoded(pathname === '/' ? '/index.html' : pathname)
  if (asked === undefined || asked.includes('\0')) return undefined
  const file = path.resolve(folder, `.${asked}`)
  const inside = path.relative(folder, file)
  if (inside === '' || inside.startsWith('..') || path.isAbsolute(inside)) return undefined
  const contentType = contentTypes[path.extname(file)]
  return contentType === undefined ? undefined : { file, contentType, cacheControl: cacheControlFor(inside) }
}

const contentTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
}

/** A file whose name carries a hash of its content never changes; the page that names it is asked for anew each time. */
function cacheControlFor(inside: string): string {
  const isHashed = /^assets[\\/].*-[\w-]{8}\.\w+$/.test(inside)
  return isHashed ? 'private, max-age=31536000, immutable' : 'no-cache'
}

function decoded(pathname: string): string | undefined {
  try {
    return decodeURIComponent(pathname)
  } catch {
    return undefined
  }
}
