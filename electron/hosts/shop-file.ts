import { mkdirSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'

/** The machine's say in where data goes; handed in so that a test can be any machine. */
export interface Machine {
  readonly platform: NodeJS.Platform
  readonly home: string
  readonly environment: Readonly<Record<string, string | undefined>>
}

export const thisMachine: Machine = {
  platform: process.platform,
  home: os.homedir(),
  environment: process.env,
}

/** The shop's database: the file named, else `TALLYPLATE_FILE`, else one in the user's data folder. */
export function shopFile(named: string | undefined, machine: Machine = thisMachine): string {
  const chosen = named ?? (machine.environment.TALLYPLATE_FILE || undefined)
  return chosen === undefined ? path.join(userDataFolder(machine), 'shop.sqlite') : path.resolve(chosen)
}

/** Where this platform keeps a program's data for one user. */
export function userDataFolder({ platform, home, environment }: Machine = thisMachine): string {
  if (platform === 'win32')
    return path.join(environment.LOCALAPPDATA ?? path.join(home, 'AppData', 'Local'), 'Tallyplate')
  if (platform === 'darwin') return path.join(home, 'Library', 'Application Support', 'Tallyplate')
  const named = environment.XDG_DATA_HOME ?? ''
  // The XDG base directory specification says that a relative path here is to be ignored.
  return path.join(path.isAbsolute(named) ? named : path.join(home, '.local', 'share'), 'tallyplate')
}

/** Makes the folder that the shop's file will stand in. Only the user may look inside: it holds customers' jobs. */
export function makeFolderOf(file: string): void {
  mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 })
}
