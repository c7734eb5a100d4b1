import path from 'node:path'
import { v7 as newId } from 'uuid'
import { type Application, openApplication } from '../../electron/application.ts'

export const sampleFolder = path.join(import.meta.dirname, '../../sample-catalogue')

/** The application on this file, the sample shop loaded where the file is new. */
export async function openBenchShop(databaseFile: string): Promise<Application> {
  const shop = openApplication({
    databaseFile,
    sampleFolder,
    now: () => new Date(),
    newId: () => newId(),
    device: 'bench',
    logDefect: (_reference, request, defect) => console.error(request, defect),
  })
  const state = await shop.opened
  if (state.state !== 'ready') throw new Error(`the bench shop did not open: ${JSON.stringify(state)}`)
  return shop
}
