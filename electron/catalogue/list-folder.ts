import { readdir, stat } from 'node:fs/promises'
import path from 'node:path'
import type { CheckedInput, Output } from '../../shared-schemas/index.ts'
import { catalogueFiles } from './files/all-files.ts'
import { refusing } from './reading/refuse-unreadable.ts'

type FolderList = Output<'catalogue.list-folder'>
type FolderEntry = FolderList['entries'][number]

/** What may stand where a path was typed so far: the folders and the files that can be loaded, and what it names now. */
export async function listFolder(
  { typed, most }: CheckedInput<'catalogue.list-folder'>,
  homeFolder: string,
): Promise<FolderList> {
  const full = fullPath(typed, homeFolder)
  const isAnotherFolder = typed.trim() === '' || endsAsFolder.test(typed.trim())
  const folder = isAnotherFolder ? full : path.dirname(full)
  const begun = isAnotherFolder ? '' : path.basename(full)
  const found = await refusing(folder, () => readdir(folder, { withFileTypes: true }))
  const wanted = found
    .map(({ name }) => name)
    .filter(name => isOffered(name, begun))
    .sort(byName)
  const entries: FolderEntry[] = []
  let left = 0
  for (const name of wanted) {
    const entry = await describe(path.join(folder, name))
    if (entry === undefined) continue
    if (entries.length < most) entries.push(entry)
    else left += 1
  }
  return { folder, entries, left, named: await nameWhatStands(full) }
}

const endsAsFolder = path.sep === '\\' ? /^~$|[\\/]$/ : /^~$|\/$/

/** From the person's own folder on, which `~` names too. Quotation marks come along when a path is copied. */
function fullPath(typed: string, homeFolder: string): string {
  const bare = typed
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .replace(/^~(?=$|[\\/])/, () => homeFolder)
  return path.resolve(homeFolder, bare)
}

/** What begins with a point is the system's own, unless it is asked for. */
function isOffered(name: string, begun: string): boolean {
  if (name.startsWith('.') && !begun.startsWith('.')) return false
  return name.toLocaleLowerCase('en').startsWith(begun.toLocaleLowerCase('en'))
}

/** The same order on every machine. */
const { compare: byName } = new Intl.Collator('en', { numeric: true })

async function describe(full: string): Promise<FolderEntry | undefined> {
  const name = path.basename(full)
  // What was removed meanwhile, or leads nowhere, cannot be loaded either.
  const found = await stat(full).catch(() => undefined)
  if (found?.isDirectory()) return { path: full + path.sep, name, kind: 'folder', bytes: null }
  if (!found?.isFile()) return undefined
  const kind = kindOfFile(name)
  return kind === undefined ? undefined : { path: full, name, kind, bytes: found.size }
}

function kindOfFile(name: string): 'catalogue-file' | 'supplier-file' | undefined {
  if (catalogueFiles.some(file => file.name === name)) return 'catalogue-file'
  return loadableNames.test(name) ? 'supplier-file' : undefined
}

const loadableNames = /\.(?:csv|tsv|txt|xlsx)$/i

/** What the path names as it stands; null while there is no such thing that could be loaded. */
async function nameWhatStands(full: string): Promise<FolderList['named']> {
  const entry = await describe(full)
  if (entry === undefined) return null
  if (entry.kind !== 'folder') return { path: full, kind: entry.kind, catalogueFiles: 0 }
  const names = await readdir(full).catch((): string[] => [])
  const known = names.filter(name => kindOfFile(name) === 'catalogue-file')
  return { path: full, kind: 'folder', catalogueFiles: known.length }
}
