import { Big } from 'big.js'
import { create } from 'xmlbuilder2'
import type { DocumentLine, SheetDocument } from './sheet-document.ts'

type XMLBuilder = ReturnType<typeof create>

/** One piece, in UN/ECE Recommendation 20. */
export const unitOfPieces = 'H87'
/** GTIN among the schemes of ISO/IEC 6523, as the register of its codes lists them. */
const schemeOfGtins = '0160'
/** Freight among the charges of UN/EDIFACT code list 7161. */
const codeOfCarriage = 'FC'

const namespaces = {
  order: 'urn:oasis:names:specification:ubl:schema:xsd:Order-2',
  aggregates: 'urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2',
  basics: 'urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2',
}

/** The sheet as an Order of UBL 2.1 (ISO/IEC 19845), its elements in the order of the schema. */
export function writeOrderXml(sheet: SheetDocument): string {
  const { currency } = sheet
  const order = create({ version: '1.0', encoding: 'UTF-8', invalidCharReplacement: '\ufffd' }).ele(
    namespaces.order,
    'Order',
    {
      'xmlns:cac': namespaces.aggregates,
      'xmlns:cbc': namespaces.basics,
    },
  )
  say(order, 'UBLVersionID', '2.1')
  say(order, 'ID', sheet.number)
  say(order, 'IssueDate', sheet.date)
  say(order, 'DocumentCurrencyCode', currency)
  say(order, 'LineCountNumeric', String(sheet.lines.length))
  addBuyer(order, sheet)
  addSeller(order, sheet)
  if (!new Big(sheet.carriage).eq(0)) addCarriage(order, sheet)
  const totals = order.ele('cac:AnticipatedMonetaryTotal')
  say(totals, 'LineExtensionAmount', sheet.net, { currencyID: currency })
  if (!new Big(sheet.carriage).eq(0))
    say(totals, 'ChargeTotalAmount', sheet.carriage, { currencyID: currency })
  say(totals, 'PayableAmount', sheet.total, { currencyID: currency })
  for (const line of sheet.lines) addLine(order, line, currency)
  return order.end({ prettyPrint: true })
}

/** An element of the basic components; one that has nothing to say is left out. */
function say(parent: XMLBuilder, name: string, text: string, attributes: Record<string, string> = {}): void {
  if (text !== '') parent.ele(`cbc:${name}`, attributes).txt(text)
}

function addBuyer(order: XMLBuilder, { buyer, supplier }: SheetDocument): void {
  const customer = order.ele('cac:BuyerCustomerParty')
  say(customer, 'SupplierAssignedAccountID', supplier.account)
  const party = customer.ele('cac:Party')
  say(party.ele('cac:PartyName'), 'Name', buyer.name)
  if (buyer.street + buyer.town + buyer.postcode + buyer.country !== '') {
    const address = party.ele('cac:PostalAddress')
    say(address, 'StreetName', buyer.street)
    say(address, 'CityName', buyer.town)
    say(address, 'PostalZone', buyer.postcode)
    if (buyer.country !== '') say(address.ele('cac:Country'), 'IdentificationCode', buyer.country)
  }
  if (buyer.telephone + buyer.email !== '') {
    const contact = party.ele('cac:Contact')
    say(contact, 'Telephone', buyer.telephone)
    say(contact, 'ElectronicMail', buyer.email)
  }
}

function addSeller(order: XMLBuilder, { supplier }: SheetDocument): void {
  const seller = order.ele('cac:SellerSupplierParty')
  say(seller, 'CustomerAssignedAccountID', supplier.supplier)
  say(seller.ele('cac:Party').ele('cac:PartyName'), 'Name', supplier.name)
}

function addCarriage(order: XMLBuilder, { carriage, currency }: SheetDocument): void {
  const charge = order.ele('cac:AllowanceCharge')
  say(charge, 'ChargeIndicator', 'true')
  say(charge, 'AllowanceChargeReasonCode', codeOfCarriage)
  say(charge, 'AllowanceChargeReason', 'Carriage')
  say(charge, 'Amount', carriage, { currencyID: currency })
}

function addLine(order: XMLBuilder, line: DocumentLine, currency: string): void {
  const item = order.ele('cac:OrderLine').ele('cac:LineItem')
  say(item, 'ID', String(line.line))
  say(item, 'Quantity', String(line.quantity), { unitCode: unitOfPieces })
  say(item, 'LineExtensionAmount', line.amount, { currencyID: currency })
  const price = item.ele('cac:Price')
  say(price, 'PriceAmount', line.unitPrice, { currencyID: currency })
  say(price, 'BaseQuantity', '1', { unitCode: unitOfPieces })
  const described = item.ele('cac:Item')
  say(described, 'Name', line.description || line.partNumber)
  say(described.ele('cac:SellersItemIdentification'), 'ID', line.supplierCode)
  say(described.ele('cac:ManufacturersItemIdentification'), 'ID', line.partNumber)
  if (line.gtin !== null)
    say(described.ele('cac:StandardItemIdentification'), 'ID', line.gtin, { schemeID: schemeOfGtins })
}
