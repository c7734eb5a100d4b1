import type { CatalogueTexts } from './catalogue-folder.ts'
import { testDay } from './open-test-shop.ts'

/**
 * A shop whose reorder has something of each kind to say on 23 November 2026. All names are invented. A year of usage by
 * weeks is made of how many pieces each part sells in a week.
 */
export const reorderShop: CatalogueTexts = {
  'families.csv': `family,name,function,appliance_types,hazards,safety_device
belt,Drum belt,drive,washer,moving,no
hose,Drain hose,drain,washer,water,no
lock,Door lock,door,washer,mains,yes
`,
  'attributes.csv': 'family,attribute,unit,rule,tolerance\nbelt,length,mm,equal,\n',
  'parts.csv': `part_number,family,maker,kind,description,gtin,attributes
B-100,belt,Quorvane,genuine,Belt 1270,,length=1270
B-101,belt,Tessory,pattern,"Belt 1270, pattern",,length=1270
B-200,belt,Quorvane,genuine,Belt 1330,,length=1330
H-1,hose,Quorvane,genuine,Drain hose,,
H-2,hose,Quorvane,genuine,Drain hose long,,
00480121,hose,Quorvane,genuine,Hose clip,,
L-1,lock,Quorvane,genuine,Door lock,,
N-1,hose,Quorvane,genuine,Hose nobody sells,,
`,
  'suppliers.csv': `supplier,name,currency,minimum_order,carriage,carriage_paid_from,lead_days
DALE,Dale Spares,GBP,,6.00,100.00,3
HOLM,Holm Parts,GBP,10.00,4.50,,5
`,
  'offers.csv': `supplier,part_number,supplier_code,price,from_quantity,pack,minimum
DALE,B-100,D-B100,8.00,1,1,1
HOLM,B-100,H-B100,7.90,1,1,1
DALE,B-200,D-B200,9.00,1,1,1
HOLM,H-1,H-H1,4.00,1,5,5
DALE,H-2,D-H2,6.00,1,1,1
DALE,00480121,D-CL,0.50,1,10,10
DALE,L-1,D-L1,21.00,1,1,1
`,
  'locations.csv': 'location,kind,name\nSHOP,shop,The shop\nVAN1,van,Van 1\nBAD,quarantine,Quarantine\n',
  'opening_stock.csv': `location,part_number,quantity,bin
SHOP,B-101,4,A1
VAN1,H-2,6,
BAD,L-1,9,
SHOP,00480121,200,A2
`,
  'usage.csv': usageUpTo(testDay),
}

/** The same shop, its usage up to another day. */
export function reorderShopUpTo(day: Date): CatalogueTexts {
  return { ...reorderShop, 'usage.csv': usageUpTo(day) }
}

/** So many pieces of each part once in each of the last 52 weeks. */
function usageUpTo(day: Date): string {
  const last = Date.parse(day.toISOString().slice(0, 10))
  const days = Array.from({ length: 52 }, (_, back) =>
    new Date(last - back * 7 * 86_400_000).toISOString().slice(0, 10),
  )
  const weekly = { 'B-100': 2, 'B-200': 1, 'H-1': 1, 'H-2': 1, '00480121': 3, 'L-1': 1, 'N-1': 1 }
  const rows = days.flatMap(date =>
    Object.entries(weekly).map(([part, pieces]) => `${date},SHOP,${part},${pieces},`),
  )
  return `date,location,part_number,quantity,job\n${rows.join('\n')}\n`
}
