import { existsSync } from 'node:fs'
import path from 'node:path'

/** A Chromium, Chrome or Edge on this machine, by looking in the usual places. */
export function findBrowser(
  environment: Readonly<Record<string, string | undefined>> = process.env,
  platform: NodeJS.Platform = process.platform,
): string | undefined {
  const named = environment.TALLYPLATE_TEST_BROWSER
  if (named) return named
  return [...onPath(environment, platform), ...usualPlaces(environment, platform)].find(file =>
    existsSync(file),
  )
}

/** The browser's path; throws the one line that says what to install. */
export function requireBrowser(): string {
  const found = findBrowser()
  if (found === undefined) throw new Error(noBrowser)
  return found
}

export const noBrowser =
  'The tests need Chromium, Chrome or Edge: install one (Debian: apt-get install chromium), or name its program in TALLYPLATE_TEST_BROWSER.'

const programs = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge']

function onPath(
  environment: Readonly<Record<string, string | undefined>>,
  platform: NodeJS.Platform,
): string[] {
  if (platform === 'win32') return []
  const folders = (environment.PATH ?? '').split(path.delimiter).filter(folder => folder !== '')
  return programs.flatMap(program => folders.map(folder => path.join(folder, program)))
}

function usualPlaces(
  environment: Readonly<Record<string, string | undefined>>,
  platform: NodeJS.Platform,
): string[] {
  if (platform === 'darwin')
    return ['Google Chrome', 'Chromium', 'Microsoft Edge'].map(
      name => `/Applications/${name}.app/Contents/MacOS/${name}`,
    )
  if (platform !== 'win32') return []
  const folders = [environment.PROGRAMFILES, environment['PROGRAMFILES(X86)'], environment.LOCALAPPDATA]
  return folders
    .filter(folder => folder !== undefined)
    .flatMap(folder => [
      path.join(folder, 'Google/Chrome/Application/chrome.exe'),
      path.join(folder, 'Chromium/Application/chrome.exe'),
      path.join(folder, 'Microsoft/Edge/Application/msedge.exe'),
    ])
}
