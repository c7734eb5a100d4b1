import { existsSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { openBrowserHost } from '../browser-host.ts'
import { pageFolder } from '../installation.ts'
import { untilInterrupted } from '../interruption.ts'
import type { Command } from './command.ts'
import { wholeNumber } from './options.ts'
import { WrongUse } from './wrong-use.ts'

export const serve: Command = {
  name: 'serve',
  words: '',
  leastWords: 0,
  mostWords: 0,
  does: 'serves the screen to a browser on this machine until it is interrupted',
  options: { port: { value: 'number', does: 'the port on 127.0.0.1; any free one unless told' } },
  shop: 'may-make',
  async run(given, { databaseFile, tell }) {
    const port = wholeNumber(given, 'port') ?? 0
    if (port > 65_535) throw new WrongUse(`--port takes a number up to 65535; ${port} is more.`)
    if (!existsSync(path.join(pageFolder, 'index.html')))
      throw new WrongUse('The screen is not built yet. Run npm run build, then serve again.')
    const host = await openBrowserHost({
      engine: { databaseFile, sampleFolder: null, device: os.hostname() },
      port,
      pageFolder,
    })
    const address = host.newAddress()
    const text = `Open this address in a browser on this machine; it works once:\n${address}\nStop with Ctrl+C.`
    return {
      value: { address, port: host.port, pid: process.pid },
      text,
      needsPerson: false,
      stay: async () => {
        const end = await Promise.race([untilInterrupted(), host.died])
        if (end === undefined) await host.close()
        else tell(end)
        return end === undefined ? 0 : 3
      },
    }
  },
}
