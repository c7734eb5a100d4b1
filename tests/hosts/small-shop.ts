import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { openApplication } from '../../electron/application.ts'
import { surroundingsOf } from '../../electron/hosts/surroundings.ts'
import type { CatalogueTexts } from '../builders/catalogue-folder.ts'

/** A shop just large enough that every request has something to say. All names are invented. */
export const smallCatalogue: CatalogueTexts = {
  'brands.csv': 'brand\nQuorvane\nTollbrae\n',
  'models.csv': [
    'brand,model_number,appliance_type,platform,made_from,made_to,volts,hertz,watts',
    'Quorvane,QV-1042/A,dishwasher,P1,2012-01,2016-12,230,50,2100',
    'Quorvane,QV-1042/B,dishwasher,P1,2015-01,2019-12,230,50,2100',
    'Tollbrae,TB 77310,washer,P2,2010-01,,230,50,1900',
    '',
  ].join('\n'),
  'sales_names.csv':
    'brand,sales_name,model_number\nQuorvane,Harbour 60,QV-1042/A\nQuorvane,Harbour 60,QV-1042/B\n',
  'families.csv': [
    'family,name,function,appliance_types,hazards,safety_device',
    'drain-pump-p1,Drain pump,drain,dishwasher,mains|water,no',
    'door-belt-p2,Drum belt,drive,washer,moving,no',
    '',
  ].join('\n'),
  'parts.csv': [
    'part_number,family,maker,kind,description,gtin,attributes',
    '00480121,drain-pump-p1,Quorvane,genuine,Drain pump,,',
    '00480122,drain-pump-p1,Quorvane,genuine,Drain pump with seal,,',
    '1E5,door-belt-p2,Tollbrae,genuine,Drum belt,,',
    '',
  ].join('\n'),
  'cross_references.csv': 'number,part_number\nXR-9,00480122\n',
  'fitments.csv': [
    'says,family,part_number,brand,model_number,made_from,made_to,serial_from,serial_to,position,quantity,source',
    'includes,,00480122,Quorvane,QV-1042/A,,,,,,1,Quorvane list 3',
    'includes,,00480122,Quorvane,QV-1042/B,2017-01,,,,,1,Quorvane list 3',
    'includes,door-belt-p2,,Tollbrae,TB 77310,,,,,,1,bench note 12',
    '',
  ].join('\n'),
  'supersessions.csv': 'old_part,new_part,way,made_from,made_to,also_needs\n00480121,00480122,one,,,\n',
  'locations.csv': 'location,kind,name\nSHOP,shop,The shop\nVAN1,van,Van 1\n',
  'opening_stock.csv': 'location,part_number,quantity,bin\nSHOP,00480122,4,A3\nVAN1,1E5,2,\n',
}

export interface SmallShop {
  /** A folder of its own, taken away by `remove`. */
  readonly folder: string
  readonly catalogueFolder: string
  readonly databaseFile: string
  readonly remove: () => void
}

/** The small shop's catalogue in a folder, and loaded into a database beside it. */
export async function makeSmallShop(catalogue: CatalogueTexts = smallCatalogue): Promise<SmallShop> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'tallyplate-small-'))
  const catalogueFolder = path.join(folder, 'catalogue')
  const databaseFile = path.join(folder, 'shop.sqlite')
  mkdirSync(catalogueFolder)
  for (const [name, content] of Object.entries(catalogue))
    writeFileSync(path.join(catalogueFolder, name), content)
  const application = openApplication(
    surroundingsOf({ databaseFile, sampleFolder: null, device: 'test-counter' }),
  )
  const reply = await application.ask('catalogue.load-files', { path: catalogueFolder, strict: true })
  application.close()
  if (!reply.ok) throw new Error(`the small shop does not load: ${JSON.stringify(reply.problem)}`)
  return {
    folder,
    catalogueFolder,
    databaseFile,
    remove: () => rmSync(folder, { recursive: true, force: true }),
  }
}
