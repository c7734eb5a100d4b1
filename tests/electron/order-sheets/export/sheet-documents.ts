import fc from 'fast-check'
import type { DocumentLine, SheetDocument } from '../../../../electron/order-sheets/export/sheet-document.ts'
import { reckonAmount, reckonTotals } from '../../../../electron/order-sheets/reckon-totals.ts'

/** A sheet as it goes out; all names are invented, the telephone number is one that Ofcom keeps for drama. */
export function documentOf(
  lines: readonly Partial<DocumentLine>[],
  changed: Partial<SheetDocument> = {},
): SheetDocument {
  const currency = changed.currency ?? 'GBP'
  const filled = lines.map((line, at) => fillDocumentLine({ line: at + 1, ...line }, currency))
  return {
    number: '2026-0007',
    date: '2026-11-23',
    currency,
    buyer: {
      name: 'Sallowbridge Spares',
      street: '3 Weir Lane',
      town: 'Sallowbridge',
      postcode: 'SB1 2ZZ',
      country: 'GB',
      telephone: '01632 960011',
      email: 'orders@example.invalid',
    },
    supplier: { supplier: 'DALE', name: 'Dale Spares', account: 'AC-20931' },
    lines: filled,
    ...reckonTotals(filled, { carriage: '5.95', currency }),
    ...changed,
  }
}

function fillDocumentLine(said: Partial<DocumentLine>, currency: string): DocumentLine {
  const line = {
    line: 1,
    partNumber: '00480121',
    description: 'Sensor lead',
    supplierCode: 'D-9',
    gtin: null,
    quantity: 2,
    pack: 1,
    unitPrice: '3.335',
    job: '',
    ...said,
  }
  return { amount: reckonAmount(line, currency), ...line }
}

/** Text as lists really have it, and worse: formulas, quotes, markup, separators, controls, letters of all kinds. */
const awkward = fc.oneof(
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 40 }),
  fc.string({ unit: 'binary', minLength: 1, maxLength: 20 }),
  fc.constantFrom(
    '=1+1',
    '-2+3',
    '@SUM(A1)',
    '00480121',
    '1E5',
    '5 < 6 & "x"',
    ']]>',
    'a;b,c\td|e',
    "'=x",
    '16 µF ±5 %',
  ),
)

export const anyDocument: fc.Arbitrary<SheetDocument> = fc
  .record({
    currency: fc.constantFrom('GBP', 'EUR', 'JPY', 'KWD'),
    lines: fc.array(
      fc.record({
        partNumber: awkward,
        description: awkward,
        supplierCode: awkward,
        quantity: fc.integer({ min: 1, max: 999_999 }),
        unitPrice: fc.tuple(fc.nat(99_999), fc.nat(9999)).map(([whole, parts]) => `${whole}.${parts}`),
        gtin: fc.constantFrom(null, '02000010000005'),
        job: fc.constantFrom('', 'J731'),
      }),
      { minLength: 1, maxLength: 12 },
    ),
    carriage: fc.constantFrom('0', '5.95', '14'),
  })
  .map(({ currency, lines, carriage }) => {
    const sheet = documentOf(lines, { currency })
    return { ...sheet, ...reckonTotals(sheet.lines, { carriage, currency }) }
  })
