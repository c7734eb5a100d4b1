import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import type { Plugin } from 'vite'

/** A package that goes out with the program, by its folder. */
interface Bundled {
  readonly name: string
  readonly version: string
  readonly licence: string
  /** What its licence files say; empty where it has none. */
  readonly texts: readonly string[]
}

/** Gathers the folders of the packages that bundles are made of. */
export function gatherPackages(): { readonly plugin: Plugin; readonly folders: ReadonlySet<string> } {
  const folders = new Set<string>()
  const plugin: Plugin = {
    name: 'gather-packages',
    moduleParsed({ id }) {
      const folder = packageFolderOf(id)
      if (folder !== undefined) folders.add(folder)
    },
  }
  return { plugin, folders }
}

/** The folder of the package that a module belongs to: the innermost, where packages hold others. */
export function packageFolderOf(id: string): string | undefined {
  return /^.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+(?=[\\/])/.exec(id.replace(/^\0/, ''))?.[0]
}

/** The notices of all these packages: who made each, and the terms under which it may be passed on, each terms once. */
export function writeNotices(folders: Iterable<string>): string {
  const packages = [...new Set(folders)].map(readPackage)
  const sorted = packages.sort((one, other) => (titleOf(one) < titleOf(other) ? -1 : 1))
  const byTerms = Map.groupBy(sorted, ({ texts }) => texts.join('\n\n'))
  return [heading, ...[...byTerms].map(([terms, under]) => writeTerms(terms, under))].join('\n')
}

function titleOf({ name, version, licence }: Bundled): string {
  return `${name} ${version} (${licence})`
}

const heading = `Tallyplate contains the work of others. Each part below is theirs, under the terms that stand with it.
The window is drawn by Electron, whose own notices come with it.
`

function writeTerms(terms: string, under: readonly Bundled[]): string {
  const rule = '='.repeat(72)
  return [rule, ...new Set(under.map(titleOf)), rule, '', terms, ''].join('\n')
}

function readPackage(folder: string): Bundled {
  const { name, version, license } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')) as {
    readonly name: string
    readonly version: string
    readonly license?: string
  }
  const texts = readdirSync(folder)
    .filter(file => /^(?:licen[cs]e|notice|copying)/i.test(file))
    .sort()
    .map(file => readFileSync(path.join(folder, file), 'utf8').trim())
  if (license === undefined && texts.length === 0)
    throw new Error(`every package that goes out says its licence, but ${name} ${version} says none`)
  return { name, version, licence: license ?? 'as it says', texts }
}
