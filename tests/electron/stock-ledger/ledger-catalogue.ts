/** Three parts and four places, with nothing on hand. */
export const ledgerCatalogue = {
  'families.csv': 'family,name,hazards\npump,Pump,\n',
  'parts.csv': 'part_number,family,kind\n480121,pump,genuine\n480122,pump,pattern\n480130,pump,genuine\n',
  'locations.csv':
    'location,kind,name\nshop,shop,Shop\nvan-1,van,Van 1\nvan-2,van,Van 2\nhold,quarantine,Hold\n',
}

export const ledgerParts = ['480121', '480122', '480130'] as const
export const ledgerPlaces = ['shop', 'van-1', 'van-2', 'hold'] as const
