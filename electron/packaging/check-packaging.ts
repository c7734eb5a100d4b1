import { existsSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'

// electron-builder has no command that only validates, so that its own validator is reached by a deep path; the exact
// version in package.json keeps it where it is.
const require = createRequire(import.meta.url)
const { validateConfiguration } = require('app-builder-lib/out/util/config/config.js') as {
  readonly validateConfiguration: (configuration: unknown, logger: unknown) => Promise<void>
}
const { DebugLogger } = require('builder-util') as {
  readonly DebugLogger: new (isEnabled: boolean) => unknown
}

const programFolder = path.join(import.meta.dirname, '../..')
const file = path.join(import.meta.dirname, 'electron-builder.json')
const configuration = JSON.parse(readFileSync(file, 'utf8')) as {
  readonly extraResources: readonly { readonly from: string }[]
}

await validateConfiguration(configuration, new DebugLogger(false))
for (const { from } of configuration.extraResources)
  if (!existsSync(path.join(programFolder, from)))
    throw new Error(`electron-builder.json ships ${from}, which is not there`)
console.log('The packaging configuration is valid.')
