import type { CatalogueTexts } from './catalogue-folder.ts'

/** A shop in which each rule of the order check has something to find. All names are invented. */
export const orderShop: CatalogueTexts = {
  'brands.csv': 'brand\nQuorvane\nTollbrae\n',
  'models.csv': `brand,model_number,appliance_type,platform,made_from,made_to,volts,hertz,watts
Quorvane,QV-1042/A,dishwasher,,2012-01,2016-12,230,50,2100
Quorvane,QV-1042/B,dishwasher,,2015-01,2019-12,230,50,2100
Tollbrae,TB 77310,washer,,2010-01,,230,50,1900
`,
  'families.csv': `family,name,function,appliance_types,hazards,safety_device
pump,Drain pump,drain,dishwasher,mains|water,no
lock,Door lock,door,dishwasher|washer,mains,yes
harness,Harness,wiring,dishwasher,mains,no
hinge,Hinge,door,dishwasher,,no
hv,High-voltage transformer,power,microwave,microwave-hv,no
belt,Drum belt,drive,washer,moving,no
`,
  'parts.csv': `part_number,family,maker,kind,description,gtin,attributes
P-100,pump,Quorvane,genuine,Drain pump,,
P-101,pump,Tessory,pattern,"Drain pump, pattern",,
P-150,pump,Quorvane,genuine,"Drain pump, later",,
P-160,pump,Quorvane,genuine,"Drain pump, from 2017",,
L-200,lock,Quorvane,genuine,Door lock,,
L-201,lock,Quorvane,genuine,"Door lock, later",,
K-9,harness,Quorvane,genuine,Adapter harness,,
H-1,hinge,Quorvane,genuine,Hinge,,
M-1,hv,Tollbrae,genuine,Transformer,,
S-1,belt,Tollbrae,genuine,Belt,,
S-2,belt,Tollbrae,genuine,"Belt, later",,
B-1,belt,Tollbrae,genuine,Belt one,,
B-2,belt,Tollbrae,genuine,Belt two,,
00480121,harness,Quorvane,genuine,Sensor lead,,
`,
  'cross_references.csv': 'number,part_number\nXR-100,P-100\n',
  'fitments.csv': `says,family,part_number,brand,model_number,made_from,made_to,serial_from,serial_to,position,quantity,source
includes,,P-100,Quorvane,QV-1042/A,,,,,,1,Quorvane list 3
includes,,P-101,Quorvane,QV-1042/A,,,,,,1,Tessory list
includes,,P-100,Quorvane,QV-1042/B,,2016-12,,,,1,Quorvane list 3
excludes,,P-101,Quorvane,QV-1042/B,,,,,,,Tessory list
includes,,L-200,Quorvane,QV-1042/A,,,,,,1,Quorvane list 3
includes,,H-1,Quorvane,QV-1042/A,,,,,left,1,Quorvane list 3
includes,,H-1,Quorvane,QV-1042/A,,,,,right,1,Quorvane list 3
includes,,S-2,Tollbrae,TB 77310,,,,,,1,bench note 12
includes,,B-1,Tollbrae,TB 77310,,,,,,1,bench note 12
`,
  'supersessions.csv': `old_part,new_part,way,made_from,made_to,also_needs
L-200,L-201,one,,,K-9
S-1,S-2,one,,,
B-1,B-2,both,,,
P-150,P-160,one,2017-01,,
`,
  'suppliers.csv': `supplier,name,currency,minimum_order,carriage,carriage_paid_from,lead_days
DALE,Dale Spares,GBP,,,,2
HOLM,Holm Parts,GBP,,,,3
`,
  'offers.csv': `supplier,part_number,supplier_code,price,from_quantity,pack,minimum
DALE,P-100,D100,12.00,1,1,1
HOLM,P-100,H100,11.00,1,10,10
DALE,K-9,D9,3.00,1,5,1
DALE,H-1,D1,4.00,1,1,4
HOLM,P-101,H101,6.00,1,1,1
HOLM,S-2,H2,6.00,1,1,1
`,
  'locations.csv': 'location,kind,name\nSHOP,shop,The shop\nVAN1,van,Van 1\nBAD,quarantine,Quarantine\n',
  'opening_stock.csv': `location,part_number,quantity,bin
SHOP,P-100,3,A1
VAN1,P-100,1,
VAN1,B-2,1,
BAD,M-1,5,
SHOP,S-1,4,
`,
}
