import { crc32, inflateRawSync } from 'node:zlib'

/** More than this, unpacked, is no price list: a real workbook of that size takes minutes and gigabytes to read. */
export const mostUnpackedBytes = 192 * 1024 * 1024
const mostEntries = 4096

/**
 * Why a ZIP archive (APPNOTE.TXT of its makers; ECMA-376 part 2 packs workbooks in it) should not be handed to a
 * reader; undefined where it is whole. Each file in it is unpacked no further than it says it goes, and its check sum
 * compared: so that what is damaged or cut off, or swells without end, is known before a row is taken from it.
 */
export function findArchiveFault(archive: Buffer): string | undefined {
  const directory = findDirectory(archive)
  if (directory === undefined) return 'the end of the file is missing: it was cut off on the way'
  if (directory.entries > mostEntries) return wordTooLarge()
  const names: string[] = []
  let [at, unpacked] = [directory.at, 0]
  for (let nth = 0; nth < directory.entries; nth += 1) {
    const entry = readEntry(archive, at)
    if (entry === undefined) return 'its list of contents is damaged'
    unpacked += entry.size
    if (unpacked > mostUnpackedBytes) return wordTooLarge()
    const fault = findEntryFault(archive, entry)
    if (fault !== undefined) return fault
    names.push(entry.name)
    at = entry.next
  }
  if (new Set(names).size < names.length) return 'it holds two files of one name'
  return names.includes('xl/workbook.xml') ? undefined : 'it is an archive, but no workbook of the kind .xlsx'
}

function wordTooLarge(): string {
  const megabytes = Math.round(mostUnpackedBytes / 1024 / 1024)
  return `it unpacks to more than ${megabytes} MB: save the sheet that is wanted as CSV and load that`
}

interface Entry {
  readonly name: string
  readonly isLocked: boolean
  readonly method: number
  readonly checkSum: number
  readonly packed: number
  readonly size: number
  readonly header: number
  readonly next: number
}

const endSignature = 0x06054b50
const endBytes = 22
const longestComment = 0xffff

function findDirectory(archive: Buffer): { readonly at: number; readonly entries: number } | undefined {
  const earliest = Math.max(0, archive.length - endBytes - longestComment)
  for (let at = archive.length - endBytes; at >= earliest; at -= 1)
    if (archive.readUInt32LE(at) === endSignature)
      return { entries: archive.readUInt16LE(at + 10), at: archive.readUInt32LE(at + 16) }
  return undefined
}

const entrySignature = 0x02014b50
const entryBytes = 46

function readEntry(archive: Buffer, at: number): Entry | undefined {
  if (at + entryBytes > archive.length || archive.readUInt32LE(at) !== entrySignature) return undefined
  const nameBytes = archive.readUInt16LE(at + 28)
  const rest = nameBytes + archive.readUInt16LE(at + 30) + archive.readUInt16LE(at + 32)
  return {
    isLocked: (archive.readUInt16LE(at + 8) & 1) === 1,
    method: archive.readUInt16LE(at + 10),
    checkSum: archive.readUInt32LE(at + 16),
    packed: archive.readUInt32LE(at + 20),
    size: archive.readUInt32LE(at + 24),
    header: archive.readUInt32LE(at + 42),
    name: archive.toString('utf8', at + entryBytes, at + entryBytes + nameBytes),
    next: at + entryBytes + rest,
  }
}

const headerSignature = 0x04034b50
const headerBytes = 30

function findEntryFault(archive: Buffer, entry: Entry): string | undefined {
  const { name, isLocked, header, packed } = entry
  if (isLocked) return 'it is locked with a password: save it without one'
  if (header + headerBytes > archive.length || archive.readUInt32LE(header) !== headerSignature)
    return wordDamaged(name)
  const nameEnd = header + headerBytes + archive.readUInt16LE(header + 26)
  // What stands before a file must say of it what the list says: a reader may go by either.
  const isSame =
    archive.toString('utf8', header + headerBytes, nameEnd) === name &&
    archive.readUInt16LE(header + 8) === entry.method
  if (!isSame) return wordDamaged(name)
  const from = nameEnd + archive.readUInt16LE(header + 28)
  if (from + packed > archive.length) return wordDamaged(name)
  const unpacked = unpack(archive.subarray(from, from + packed), entry)
  return unpacked?.length === entry.size && crc32(unpacked) === entry.checkSum ? undefined : wordDamaged(name)
}

function unpack(packed: Buffer, { method, size }: Entry): Buffer | undefined {
  if (method === 0) return packed
  if (method !== 8) return undefined
  try {
    return inflateRawSync(packed, { maxOutputLength: Math.max(1, size) })
  } catch {
    return undefined
  }
}

function wordDamaged(name: string): string {
  return `${name} in it is damaged: fetch or save the file anew`
}
