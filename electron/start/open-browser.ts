import { existsSync } from 'node:fs'
import path from 'node:path'

/** Whether a window can be shown at all. On Linux that takes a display server; a remote shell has none. */
export function hasDisplay(
  platform: NodeJS.Platform,
  environment: Readonly<Record<string, string | undefined>>,
): boolean {
  if (platform !== 'linux') return true
  return Boolean(environment.DISPLAY || environment.WAYLAND_DISPLAY)
}

/** Opens an address in the default browser where there is a display and a browser. Says whether it tried. */
export async function openBrowser(address: string): Promise<boolean> {
  if (!hasDisplay(process.platform, process.env) || !hasDefaultBrowser()) return false
  const { default: open } = await import('open')
  const child = await open(address)
  // A browser that is missing after all reports it here; the address is printed anyway.
  child.on('error', () => {})
  return true
}

/** On Linux a desktop has xdg-open and a browser that it leads to; elsewhere the system has one. */
function hasDefaultBrowser(): boolean {
  if (process.platform !== 'linux') return true
  return ['xdg-open', ...linuxBrowsers].filter(isOnPath).length > 1 || isOnPath('gio')
}

const linuxBrowsers = ['x-www-browser', 'firefox', 'chromium', 'google-chrome', 'www-browser']

function isOnPath(name: string): boolean {
  return (process.env.PATH ?? '').split(path.delimiter).some(folder => existsSync(path.join(folder, name)))
}
