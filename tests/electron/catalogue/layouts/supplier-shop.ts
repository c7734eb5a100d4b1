import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { GivenInput } from '../../../../shared-schemas/index.ts'
import { openTestShop, type TestShop } from '../../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../../builders/small-catalogue.ts'

/** The small catalogue, open, with a folder for the files that its suppliers send. */
export interface SupplierShop extends TestShop {
  readonly folder: string
  write(name: string, content: string | Uint8Array): string
}

export async function openSupplierShop(): Promise<SupplierShop> {
  const shop = await openTestShop(smallCatalogue)
  const folder = mkdtempSync(path.join(tmpdir(), 'tallyplate-suppliers-'))
  return {
    ...shop,
    folder,
    write(name, content) {
      const file = path.join(folder, name)
      writeFileSync(file, content)
      return file
    },
    close() {
      shop.close()
      rmSync(folder, { recursive: true })
    },
  }
}

type GivenLayout = GivenInput<'catalogue.save-layout'>['layout']

/** A layout with the fields that nobody minds filled in. */
export function layoutOf(
  given: Partial<GivenLayout> & Pick<GivenLayout, 'columns' | 'headings'>,
): GivenLayout {
  return {
    name: 'Harrow list',
    feeds: 'offers.csv',
    reading: { encoding: 'windows-1252', separator: ';', sheet: null, headerRow: 1 },
    ...given,
  }
}

/** An order list as a German-speaking supplier may send it. */
export const priceList = layoutOf({
  headings: ['Artikel-Nr.', 'Bezeichnung', 'Preis', 'ab Menge', 'VE'],
  columns: [
    { column: 'supplier', constant: 'DEALER' },
    { column: 'part_number', heading: 'Artikel-Nr.' },
    { column: 'price', heading: 'Preis', decimalSign: ',', thousands: true },
    { column: 'from_quantity', heading: 'ab Menge' },
    { column: 'pack', heading: 'VE' },
  ],
})

export function latin1(text: string): Uint8Array {
  return Buffer.from(text, 'latin1')
}
