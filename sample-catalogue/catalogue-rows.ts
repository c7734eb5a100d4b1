/** The files of a catalogue folder and their columns, in the order in which the sample writes them. */
export const catalogueColumns = {
  'brands.csv': ['brand'],
  'models.csv': [
    'brand',
    'model_number',
    'appliance_type',
    'platform',
    'made_from',
    'made_to',
    'volts',
    'hertz',
    'watts',
  ],
  'sales_names.csv': ['brand', 'sales_name', 'model_number'],
  'families.csv': ['family', 'name', 'function', 'appliance_types', 'hazards', 'safety_device'],
  'attributes.csv': ['family', 'attribute', 'unit', 'rule', 'tolerance'],
  'parts.csv': ['part_number', 'family', 'maker', 'kind', 'description', 'gtin', 'attributes'],
  'cross_references.csv': ['number', 'part_number'],
  'model_attributes.csv': ['brand', 'model_number', 'family', 'attribute', 'value'],
  'fitments.csv': [
    'says',
    'family',
    'part_number',
    'brand',
    'model_number',
    'made_from',
    'made_to',
    'serial_from',
    'serial_to',
    'position',
    'quantity',
    'source',
  ],
  'supersessions.csv': ['old_part', 'new_part', 'way', 'made_from', 'made_to', 'also_needs'],
  'kits.csv': ['kit', 'part_number', 'quantity'],
  'replaced_together.csv': ['part_number', 'with_part', 'quantity', 'why'],
  'date_codes.csv': ['brand', 'pattern', 'means'],
  'suppliers.csv': [
    'supplier',
    'name',
    'currency',
    'minimum_order',
    'carriage',
    'carriage_paid_from',
    'lead_days',
  ],
  'offers.csv': ['supplier', 'part_number', 'supplier_code', 'price', 'from_quantity', 'pack', 'minimum'],
  'locations.csv': ['location', 'kind', 'name'],
  'opening_stock.csv': ['location', 'part_number', 'quantity', 'bin'],
  'usage.csv': ['date', 'location', 'part_number', 'quantity', 'job'],
  'van_lists.csv': ['van', 'family', 'part_number', 'level'],
  'jobs.csv': [
    'job',
    'date',
    'van',
    'brand',
    'model_number',
    'symptom',
    'families_needed',
    'finished_first_visit',
  ],
  'faults.csv': [
    'appliance_type',
    'symptom',
    'also_said',
    'cause',
    'ends_in',
    'licensed_for',
    'families',
    'weight',
    'advice',
    'source',
  ],
  'fault_checks.csv': [
    'appliance_type',
    'check',
    'symptoms',
    'how',
    'measure',
    'expected',
    'tolerance',
    'outcomes',
    'minutes',
    'tools',
    'hazards',
    'competence',
    'source',
  ],
  'fault_outcomes.csv': ['appliance_type', 'check', 'cause', 'outcomes'],
  'fitting_notes.csv': ['stage', 'note', 'families', 'source'],
} as const

export type CatalogueFile = keyof typeof catalogueColumns
export type Column<File extends CatalogueFile> = (typeof catalogueColumns)[File][number]
export type Row<File extends CatalogueFile> = Readonly<Record<Column<File>, string>>
/** A row as a person writes it down: what is not known is left out. */
export type SparseRow<File extends CatalogueFile> = Readonly<Partial<Record<Column<File>, string>>>
export type Catalogue = { readonly [File in CatalogueFile]: readonly Row<File>[] }

export const catalogueFiles = Object.keys(catalogueColumns) as CatalogueFile[]

/** Separators mean nothing in a model or part number: `7.412.0358.1` and `741203581` are one number. */
export function numberKey(number: string): string {
  return number
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, '')
}
