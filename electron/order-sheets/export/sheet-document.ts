/** Who orders. Everything but the name may be '', which is not said. */
export interface Buyer {
  readonly name: string
  readonly street: string
  readonly town: string
  readonly postcode: string
  /** Two letters as in ISO 3166-1. */
  readonly country: string
  readonly telephone: string
  readonly email: string
}

/** What goes to a supplier, whatever it is written as. Nothing in it says for which customer a part is. */
export interface SheetDocument {
  readonly number: string
  /** The day on which the sheet was checked, `2026-11-23`: writing it again later changes nothing. */
  readonly date: string
  readonly currency: string
  readonly buyer: Buyer
  readonly supplier: {
    readonly supplier: string
    readonly name: string
    /** The shop's account with the supplier; '' is not said. */
    readonly account: string
  }
  readonly lines: readonly DocumentLine[]
  readonly net: string
  readonly carriage: string
  readonly total: string
}

export interface DocumentLine {
  readonly line: number
  readonly partNumber: string
  readonly description: string
  /** The supplier's own number, or the part number where the supplier has none. */
  readonly supplierCode: string
  readonly gtin: string | null
  readonly quantity: number
  readonly pack: number
  readonly unitPrice: string
  readonly amount: string
  /** The shop's job that waits for it; '' is none. */
  readonly job: string
}

/** One file of an exported sheet. */
export interface SheetFile {
  readonly name: string
  readonly bytes: Uint8Array
}
