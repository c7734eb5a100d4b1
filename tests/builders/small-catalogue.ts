/**
 * A catalogue in which every kind of file has a row or two, all sound: two brands, three washers and a dryer, two part
 * families with five parts, one supplier, a shop and a van. A test changes the one file that it is about.
 */
export const smallCatalogue = {
  'brands.csv': 'brand\nOstrel\nBrennick\n',
  'models.csv': `brand,model_number,appliance_type,platform,made_from,made_to,volts,hertz,watts
Ostrel,OW 4512/01,washer,washer-1,2012-03,2014-02,220-240,50,2150
Ostrel,OW 4512/02,washer,washer-1,2014-03,,230,50,
Ostrel,OW 4530/01,washer,,,,,,
Brennick,4821-07,dryer,,2010,2011,115/230,50/60,
`,
  'sales_names.csv': `brand,sales_name,model_number
Ostrel,Aqualane 44,OW 4512/01
Ostrel,Aqualane 44,OW 4512/02
`,
  'families.csv': `family,name,function,appliance_types,hazards,safety_device
drain-pump,Drain pump,water outlet,washer|dishwasher,mains|water|moving,no
door-lock,Door lock,door,washer,mains,yes
`,
  'attributes.csv': `family,attribute,unit,rule,tolerance
drain-pump,volts,V,covers,
drain-pump,spigot,,equal,
drain-pump,watts,W,within,0.1
`,
  'parts.csv': `part_number,family,maker,kind,description,gtin,attributes
0048-0121,drain-pump,Ostrel,genuine,Drain pump,2000010000005,volts=220..240;spigot=22 mm;watts=30
0048-0122,drain-pump,Ostrel,genuine,"Drain pump, later",,volts=220..240
0048-0123,drain-pump,Ostrel,genuine,"Drain pump, last",,
PX 7,drain-pump,Tessory,pattern,"Drain pump, ""universal""",,spigot=22 mm
1E5,door-lock,Brennick,genuine,Door lock,,
`,
  'cross_references.csv': 'number,part_number\nB20-6A,0048-0121\n',
  'model_attributes.csv':
    'brand,model_number,family,attribute,value\nOstrel,OW 4512/01,drain-pump,spigot,22 mm\n',
  'fitments.csv': `says,family,part_number,brand,model_number,made_from,made_to,serial_from,serial_to,position,quantity,source
includes,drain-pump,,Ostrel,OW 4512/01,,,,,,1,Ostrel parts list
includes,,1E5,Brennick,4821-07,2010,2011-06,100,2000,left,2,Counter notes
includes,drain-pump,,Ostrel,OW 45*,,,,,,1,Dealer list
`,
  'supersessions.csv': `old_part,new_part,way,made_from,made_to,also_needs
0048-0121,0048-0122,one,,,PX 7
`,
  'kits.csv': 'kit,part_number,quantity\nPX 7,0048-0123,2\n',
  'replaced_together.csv': 'part_number,with_part,quantity,why\nPX 7,0048-0123,1,the seals take a set\n',
  'date_codes.csv':
    'brand,pattern,means\nOstrel,^(?<year>\\d{2})(?<week>\\d{2})\\d+$,year=2-digit;week=2-digit\n',
  'suppliers.csv': `supplier,name,currency,minimum_order,carriage,carriage_paid_from,lead_days
DEALER,Dealer Spares,GBP,25.00,5.95,120.00,2
`,
  'offers.csv': `supplier,part_number,supplier_code,price,from_quantity,pack,minimum
DEALER,0048-0121,D1,12.50,1,1,1
DEALER,0048-0121,D1,11.25,10,5,10
`,
  'locations.csv': 'location,kind,name\nshop,shop,Shop\nvan-1,van,"Van 1, Otter"\n',
  'opening_stock.csv': 'location,part_number,quantity,bin\nshop,0048-0121,5,A1\nvan-1,1E5,2,\n',
  'usage.csv': 'date,location,part_number,quantity,job\n2026-01-05,van-1,1E5,1,J1\n2026-01-06,shop,1E5,2,\n',
  'van_lists.csv': 'van,family,part_number,level\nvan-1,,1E5,2\nvan-1,drain-pump,,1\n',
  'faults.csv': `appliance_type,symptom,also_said,cause,ends_in,licensed_for,families,weight,advice,source
washer,does not drain,water stays in|pump hums,pump worn,part,,drain-pump,30,Clean the filter first,common practice
washer,does not drain,,filter blocked,no-part,,,60,Clean it and show how,common practice
washer,does not drain,,waits with water on purpose,normal,,,5,Turn the spin on,common practice
`,
  'fault_checks.csv': `appliance_type,check,symptoms,how,measure,expected,tolerance,outcomes,minutes,tools,hazards,competence,source
washer,open the filter,,Open the filter and look,,,,clear=0.9|blocked=0.1,6,tray|towel,water|sharp,anyone,common practice
washer,pump coil,does not drain,Measure across the coil,resistance,160..220 Ω,,within=0.94|low=0.02|high=0.02|open=0.02,8,meter,mains,repairer,
`,
  'fault_outcomes.csv': `appliance_type,check,cause,outcomes
washer,open the filter,filter blocked,clear=0.05|blocked=0.95
washer,pump coil,pump worn,within=0.5|low=0.1|high=0.1|open=0.3
`,
  'fitting_notes.csv': `stage,note,families,source
fitting,Seat the seal dry and check it all round.,drain-pump|door-lock,common practice
test,Watch the first run for leaks.,drain-pump,
`,
  'jobs.csv': `job,date,van,brand,model_number,symptom,families_needed,finished_first_visit
J1,2026-01-05,van-1,Brennick,4821-07,door stays open,door-lock,yes
J2,2026-01-06,,,,,,
`,
} as const

export type SmallCatalogueFile = keyof typeof smallCatalogue

/** The small catalogue with rows added at the end of one of its files. */
export function withRows(file: SmallCatalogueFile, ...rows: readonly string[]): Record<string, string> {
  return { ...smallCatalogue, [file]: `${smallCatalogue[file]}${rows.join('\n')}\n` }
}

/** The line on which the first of the added rows stands. */
export function firstAddedLine(file: SmallCatalogueFile): number {
  return smallCatalogue[file].split('\n').length
}
