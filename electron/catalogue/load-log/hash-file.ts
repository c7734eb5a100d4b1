import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { pipeline } from 'node:stream/promises'

/** The SHA-256 of a file and its size, so that two loads of the same file are known for it. */
export async function hashFile(path: string): Promise<{ readonly sha256: string; readonly bytes: number }> {
  const hash = createHash('sha256')
  let bytes = 0
  await pipeline(createReadStream(path, { highWaterMark: 1024 * 1024 }), async pieces => {
    for await (const piece of pieces) {
      bytes += piece.length
      hash.update(piece)
    }
  })
  return { sha256: hash.digest('hex'), bytes }
}
