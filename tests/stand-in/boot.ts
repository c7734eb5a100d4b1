import { readFileSync } from 'node:fs'
import { registerHooks } from 'node:module'
import path from 'node:path'
import { pathToFileURL } from 'node:url'

/** Runs a built program as Electron would: node boot.ts <program folder>. */
const standIn = new URL('./electron.ts', import.meta.url).href
registerHooks({
  resolve: (name, context, next) =>
    name === 'electron' ? { url: standIn, shortCircuit: true } : next(name, context),
})
const { becomeReady, prepareApp } = await import('./electron.ts')

const programFolder = path.resolve(process.argv[2] ?? '.')
const packageFile = JSON.parse(readFileSync(path.join(programFolder, 'package.json'), 'utf8')) as {
  readonly main: string
}
prepareApp(programFolder)
await import(pathToFileURL(path.join(programFolder, packageFile.main)).href)
becomeReady()
