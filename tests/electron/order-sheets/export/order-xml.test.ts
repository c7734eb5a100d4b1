import { readFileSync } from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import { XmlDocument } from 'libxml2-wasm'
import { expect, test } from 'vitest'
import { findOrderFaults } from '../../../../electron/order-sheets/export/find-order-faults.ts'
import { writeOrderXml } from '../../../../electron/order-sheets/export/write-order-xml.ts'
import { findSchemaFaults } from '../../../outside/ubl-2.1/order-schema.ts'
import { anyDocument, documentOf } from './sheet-documents.ts'

const sound = writeOrderXml(documentOf([{ gtin: '02000010000005' }, { quantity: 10, unitPrice: '0.5' }]))

test('an order is a valid Order of UBL 2.1 and finds no fault with our own rules', () => {
  expect(findSchemaFaults(sound)).toEqual([])
  expect(findOrderFaults(sound)).toEqual([])
})

test('the schema is really asked: the example of the standard is valid, and a line without its item is not', () => {
  const example = path.join(
    import.meta.dirname,
    '../../../outside/ubl-2.1/examples/UBL-Order-2.1-Example.xml',
  )
  expect(findSchemaFaults(readFileSync(example, 'utf8'))).toEqual([])
  expect(findSchemaFaults(sound.replace(/<cac:Item>[\s\S]*?<\/cac:Item>/, ''))).toEqual([
    expect.stringMatching(/LineItem.*Missing child element.*Item/s),
  ])
})

test('whatever the numbers and texts, the order is valid and adds up, and another reader reads them as they are', () => {
  fc.assert(
    fc.property(anyDocument, sheet => {
      const xml = writeOrderXml(sheet)
      expect(findSchemaFaults(xml)).toEqual([])
      expect(findOrderFaults(xml)).toEqual([])
      const read = readWithLibxml(xml)
      expect(read('//cac:LineItem/cbc:Quantity')).toEqual(sheet.lines.map(({ quantity }) => String(quantity)))
      expect(read('//cac:SellersItemIdentification/cbc:ID')).toEqual(
        sheet.lines.map(({ supplierCode }) => readable(supplierCode)),
      )
      expect(read('//cac:AnticipatedMonetaryTotal/cbc:PayableAmount')).toEqual([sheet.total])
    }),
    { numRuns: 60 },
  )
})

/** What XML 1.0 has no way to write stands as the replacement character; its line ends are all one. */
function readable(text: string): string {
  return text
    .replaceAll(/\r\n?/g, '\n')
    .replaceAll(/[^\t\n\x20-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '\ufffd')
}

function readWithLibxml(xml: string): (where: string) => string[] {
  const document = XmlDocument.fromString(xml)
  const names = {
    cac: 'urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2',
    cbc: 'urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2',
  }
  return where => document.find(where, names).map(node => node.content)
}

/** What the schema lets pass and our rules do not. */
test.each<[string, RegExp, string, string]>([
  [
    'no unit of the quantity',
    / unitCode="H87">2</,
    '>2<',
    'OrderLine 1 LineItem Quantity is missing, or its unit is',
  ],
  [
    'a unit that parts do not come in',
    /unitCode="H87">2</,
    'unitCode="KGM">2<',
    'OrderLine 1 LineItem Quantity unitCode is no unit',
  ],
  [
    'half a piece',
    />2<\/cbc:Quantity>/,
    '>1.5</cbc:Quantity>',
    'OrderLine 1 LineItem Quantity is no number of pieces',
  ],
  ['no price', /<cac:Price>[\s\S]*?<\/cac:Price>/, '', 'OrderLine 1 LineItem Price is missing'],
  [
    'no number of the supplier',
    /<cac:SellersItemIdentification>[\s\S]*?<\/cac:SellersItemIdentification>/,
    '',
    'SellersItemIdentification is missing',
  ],
  [
    'no currency',
    /<cbc:DocumentCurrencyCode>GBP<\/cbc:DocumentCurrencyCode>/,
    '',
    'DocumentCurrencyCode is missing',
  ],
  ['a currency that is none', />GBP</, '>ABC<', 'DocumentCurrencyCode is no currency of ISO 4217'],
  [
    'a line in another currency',
    /currencyID="GBP">6\.67/,
    'currencyID="EUR">6.67',
    '1 amounts are not in GBP',
  ],
  ['a line that is not quantity by price', />6\.67</, '>6.68<', 'line 1 is not its quantity by its price'],
  ['lines that add up to something else', />11\.67</, '>11.66<', 'the lines add up to 11.67'],
  ['a total without the carriage', />17\.62</, '>11.67<', 'lines and charges add up to 17.62'],
  [
    'a nameless buyer',
    /<cbc:Name>Sallowbridge Spares<\/cbc:Name>/,
    '<cbc:Name></cbc:Name>',
    'BuyerCustomerParty Party PartyName Name',
  ],
  [
    'a supplier without a party',
    /<cac:SellerSupplierParty>[\s\S]*?<\/cac:SellerSupplierParty>/,
    '<cac:SellerSupplierParty/>',
    'SellerSupplierParty',
  ],
  ['two lines of one number', /<cbc:ID>2<\/cbc:ID>/, '<cbc:ID>1</cbc:ID>', 'two lines have the same number'],
])('an order with %s is refused by our own rules alone', (_title, from, to, fault) => {
  const bad = sound.replace(from, to)
  expect(bad).not.toBe(sound)
  expect(findSchemaFaults(bad)).toEqual([])
  expect(findOrderFaults(bad).join('; ')).toContain(fault)
})
