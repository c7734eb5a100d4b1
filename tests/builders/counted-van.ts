import { gs1CheckDigit } from '../../shared-schemas/gs1-check-digit.ts'
import type { CatalogueTexts } from './catalogue-folder.ts'

export interface VanPart {
  readonly partNumber: string
  readonly family: string
  readonly gtin: string
  readonly bin: string
  readonly booked: number
}

/**
 * A van with sixty parts, each in a bin, with a GTIN of the restricted circulation numbers, which no real product bears.
 * The first two are of one family; a job of the day before needed a belt that nobody booked.
 */
export const vanParts: readonly VanPart[] = Array.from({ length: 60 }, (_, at) => {
  const digits = `20000${String(at + 100).padStart(7, '0')}`
  return {
    partNumber: `VP-${String(at + 1).padStart(3, '0')}`,
    family: at < 2 ? 'valve' : at === 2 ? 'belt' : `family-${at}`,
    gtin: `${digits}${gs1CheckDigit(digits)}`,
    bin: `${Math.floor(at / 6) + 1}${'ABC'[Math.floor(at / 2) % 3]}`,
    booked: at < 4 ? 2 : (at % 2) + 1,
  }
})

export function countedVanCatalogue(yesterday: string): CatalogueTexts {
  const families = [...new Set(vanParts.map(({ family }) => family))]
  return {
    'brands.csv': 'brand\nQuorvane\n',
    'models.csv': 'brand,model_number\nQuorvane,QV 1\n',
    'families.csv': `family,name\n${families.map(family => `${family},${asName(family)}\n`).join('')}`,
    'parts.csv': `part_number,family,kind,description,gtin\n${vanParts
      .map(
        ({ partNumber, family, gtin }, at) =>
          `${partNumber},${family},${at === 1 ? 'pattern' : 'genuine'},${asName(family)} ${at + 1},${gtin}\n`,
      )
      .join('')}`,
    'suppliers.csv': 'supplier,name,currency,lead_days\nDEALER,Dealer,GBP,2\n',
    'offers.csv': `supplier,part_number,price\n${vanParts.map(({ partNumber }, at) => `DEALER,${partNumber},${at + 1}.50\n`).join('')}`,
    'locations.csv': 'location,kind,name\nshop,shop,Weir Lane\nvan-1,van,"Van 1, Otter"\n',
    'opening_stock.csv': `location,part_number,quantity,bin\n${vanParts.map(({ partNumber, booked, bin }) => `van-1,${partNumber},${booked},${bin}\n`).join('')}shop,VP-001,9,S1\n`,
    'jobs.csv': `job,date,van,brand,model_number,families_needed\nJ731,${yesterday},van-1,Quorvane,QV 1,belt\n`,
  }
}

function asName(family: string): string {
  return `${family[0]?.toUpperCase()}${family.slice(1).replace('-', ' ')}`
}
