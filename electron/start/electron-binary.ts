import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'

/** Where Electron's program is, when it is whole and of the version wanted. Found by looking: requiring `electron` downloads it. */
export function findElectronBinary(
  programFolder: string,
  environment: Readonly<Record<string, string | undefined>> = process.env,
): string | undefined {
  const folder = electronFolder(programFolder)
  const name = readLine(path.join(folder, 'path.txt'))
  const elsewhere = environment.ELECTRON_OVERRIDE_DIST_PATH
  if (elsewhere) return existing(path.join(elsewhere, name ?? nameOnPlatform()))
  const installed = readLine(path.join(folder, 'dist/version'))?.replace(/^v/, '')
  if (name === undefined || installed !== wantedElectronVersion(programFolder)) return undefined
  return existing(path.join(folder, 'dist', name))
}

export function electronFolder(programFolder: string): string {
  return path.join(programFolder, 'node_modules/electron')
}

/** The version that `package.json` pinned, or nothing where the package itself is absent. */
export function wantedElectronVersion(programFolder: string): string | undefined {
  const text = readLine(path.join(electronFolder(programFolder), 'package.json'))
  return text === undefined ? undefined : (JSON.parse(text) as { readonly version: string }).version
}

function nameOnPlatform(): string {
  if (process.platform === 'darwin') return 'Electron.app/Contents/MacOS/Electron'
  return process.platform === 'win32' ? 'electron.exe' : 'electron'
}

function readLine(file: string): string | undefined {
  return existsSync(file) ? readFileSync(file, 'utf8').trim() : undefined
}

function existing(file: string): string | undefined {
  return existsSync(file) ? file : undefined
}
