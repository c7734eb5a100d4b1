/**
 * Numbers of parts and models are TEXT: in a loosely typed column `00480121` comes back as 480121 and `1E5` as 100000.
 * A `…_key` is the number in NFKC, upper case, without separators. Dates are ISO 8601 and may stop at the year or month.
 * Empty means not known and is NULL, save where it is part of a key: there it is ''.
 */
export const firstSchema = `
CREATE TABLE catalogue_state (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  version INTEGER NOT NULL CHECK (version >= 0)
) STRICT;
INSERT INTO catalogue_state VALUES (1, 0);

CREATE TABLE brand (
  brand_id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (name <> ''),
  name_key TEXT NOT NULL UNIQUE CHECK (name_key <> '')
) STRICT;

CREATE TABLE model (
  model_id INTEGER PRIMARY KEY,
  brand_id INTEGER NOT NULL REFERENCES brand,
  model_number TEXT NOT NULL,
  model_key TEXT NOT NULL CHECK (model_key <> ''),
  appliance_type TEXT NOT NULL,
  platform TEXT,
  made_from TEXT, made_to TEXT,
  volts TEXT, hertz TEXT, watts TEXT,
  UNIQUE (model_key, brand_id)
) STRICT;
CREATE INDEX model_of_brand ON model (brand_id, model_key);
CREATE INDEX model_on_platform ON model (platform) WHERE platform IS NOT NULL;

CREATE TABLE sales_name (
  brand_id INTEGER NOT NULL REFERENCES brand,
  sales_key TEXT NOT NULL CHECK (sales_key <> ''),
  model_id INTEGER NOT NULL REFERENCES model,
  sales_name TEXT NOT NULL,
  PRIMARY KEY (sales_key, brand_id, model_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX sales_name_of_model ON sales_name (model_id);

CREATE TABLE family (
  family_id INTEGER PRIMARY KEY,
  family TEXT NOT NULL UNIQUE CHECK (family <> ''),
  name TEXT NOT NULL,
  function TEXT NOT NULL,
  appliance_types TEXT NOT NULL,
  safety_device INTEGER NOT NULL CHECK (safety_device IN (0, 1))
) STRICT;

CREATE TABLE family_hazard (
  family_id INTEGER NOT NULL REFERENCES family,
  hazard TEXT NOT NULL CHECK (hazard IN ('mains', 'stored-charge', 'gas', 'sealed-refrigerant', 'microwave-hv',
    'fixed-wiring', 'water', 'hot', 'sharp', 'moving')),
  PRIMARY KEY (family_id, hazard)
) STRICT, WITHOUT ROWID;

CREATE TABLE family_attribute (
  family_id INTEGER NOT NULL REFERENCES family,
  attribute TEXT NOT NULL CHECK (attribute <> ''),
  unit TEXT NOT NULL,
  rule TEXT NOT NULL CHECK (rule IN ('equal', 'within', 'at-least', 'at-most', 'covers')),
  tolerance REAL CHECK (tolerance IS NULL OR tolerance >= 0),
  PRIMARY KEY (family_id, attribute),
  CHECK ((rule = 'within') = (tolerance IS NOT NULL))
) STRICT, WITHOUT ROWID;

CREATE TABLE part (
  part_id INTEGER PRIMARY KEY,
  part_number TEXT NOT NULL,
  part_key TEXT NOT NULL UNIQUE CHECK (part_key <> ''),
  family_id INTEGER NOT NULL REFERENCES family,
  maker TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('genuine', 'pattern')),
  description TEXT NOT NULL,
  gtin TEXT UNIQUE
) STRICT;
CREATE INDEX part_of_family ON part (family_id);

CREATE TABLE part_attribute (
  part_id INTEGER NOT NULL REFERENCES part,
  attribute TEXT NOT NULL,
  value TEXT NOT NULL CHECK (value <> ''),
  PRIMARY KEY (part_id, attribute)
) STRICT, WITHOUT ROWID;

CREATE TABLE cross_reference (
  number_key TEXT PRIMARY KEY CHECK (number_key <> ''),
  number TEXT NOT NULL,
  part_id INTEGER NOT NULL REFERENCES part
) STRICT, WITHOUT ROWID;
CREATE INDEX cross_reference_of_part ON cross_reference (part_id);

CREATE TABLE model_attribute (
  model_id INTEGER NOT NULL REFERENCES model,
  family_id INTEGER NOT NULL REFERENCES family,
  attribute TEXT NOT NULL,
  value TEXT NOT NULL CHECK (value <> ''),
  PRIMARY KEY (model_id, family_id, attribute)
) STRICT, WITHOUT ROWID;

CREATE TABLE source (
  source_id INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (name <> '')
) STRICT;

-- What is said of a family or a part, once, however many models it is said of.
CREATE TABLE fitment_terms (
  terms_id INTEGER PRIMARY KEY,
  says TEXT NOT NULL CHECK (says IN ('includes', 'excludes')),
  family_id INTEGER REFERENCES family,
  part_id INTEGER REFERENCES part,
  made_from TEXT, made_to TEXT,
  serial_from TEXT, serial_to TEXT,
  position TEXT,
  quantity INTEGER CHECK (quantity IS NULL OR quantity > 0),
  source_id INTEGER NOT NULL REFERENCES source,
  CHECK ((family_id IS NULL) <> (part_id IS NULL))
) STRICT;
CREATE UNIQUE INDEX fitment_terms_once ON fitment_terms (says, ifnull(family_id, 0), ifnull(part_id, 0),
  ifnull(made_from, ''), ifnull(made_to, ''), ifnull(serial_from, ''), ifnull(serial_to, ''),
  ifnull(position, ''), ifnull(quantity, 0), source_id);
CREATE INDEX fitment_terms_of_family ON fitment_terms (family_id) WHERE family_id IS NOT NULL;
CREATE INDEX fitment_terms_of_part ON fitment_terms (part_id) WHERE part_id IS NOT NULL;

-- Of which models the terms are said: one short row a fitment, found from either side.
CREATE TABLE fitment (
  model_id INTEGER NOT NULL REFERENCES model,
  terms_id INTEGER NOT NULL REFERENCES fitment_terms,
  PRIMARY KEY (model_id, terms_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX fitment_of_terms ON fitment (terms_id, model_id);

-- Wildcards as they were written, so that models loaded later are covered too.
CREATE TABLE fitment_pattern (
  terms_id INTEGER NOT NULL REFERENCES fitment_terms,
  brand_id INTEGER NOT NULL REFERENCES brand,
  pattern TEXT NOT NULL CHECK (pattern <> ''),
  PRIMARY KEY (brand_id, pattern, terms_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE supersession (
  supersession_id INTEGER PRIMARY KEY,
  old_part_id INTEGER NOT NULL REFERENCES part,
  new_part_id INTEGER NOT NULL REFERENCES part,
  way TEXT NOT NULL CHECK (way IN ('one', 'both')),
  made_from TEXT, made_to TEXT,
  CHECK (old_part_id <> new_part_id)
) STRICT;
CREATE UNIQUE INDEX supersession_once ON supersession (old_part_id, new_part_id, ifnull(made_from, ''), ifnull(made_to, ''));
CREATE INDEX supersession_of_new ON supersession (new_part_id);

CREATE TABLE supersession_need (
  supersession_id INTEGER NOT NULL REFERENCES supersession,
  part_id INTEGER NOT NULL REFERENCES part,
  PRIMARY KEY (supersession_id, part_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE date_code (
  brand_id INTEGER NOT NULL REFERENCES brand,
  pattern TEXT NOT NULL CHECK (pattern <> ''),
  means TEXT NOT NULL,
  PRIMARY KEY (brand_id, pattern)
) STRICT, WITHOUT ROWID;

CREATE TABLE supplier (
  supplier_id INTEGER PRIMARY KEY,
  supplier TEXT NOT NULL UNIQUE CHECK (supplier <> ''),
  name TEXT NOT NULL,
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  minimum_order TEXT, carriage TEXT, carriage_paid_from TEXT,
  lead_days INTEGER CHECK (lead_days IS NULL OR lead_days >= 0)
) STRICT;

CREATE TABLE offer (
  supplier_id INTEGER NOT NULL REFERENCES supplier,
  part_id INTEGER NOT NULL REFERENCES part,
  from_quantity INTEGER NOT NULL CHECK (from_quantity > 0),
  supplier_code TEXT,
  price TEXT NOT NULL,
  pack INTEGER NOT NULL CHECK (pack > 0),
  minimum INTEGER NOT NULL CHECK (minimum > 0),
  PRIMARY KEY (part_id, supplier_id, from_quantity)
) STRICT, WITHOUT ROWID;

CREATE TABLE location (
  location_id INTEGER PRIMARY KEY,
  location TEXT NOT NULL UNIQUE CHECK (location <> ''),
  kind TEXT NOT NULL CHECK (kind IN ('shop', 'van', 'quarantine')),
  name TEXT NOT NULL
) STRICT;

-- What the opening stock file said; the book itself is the movements it led to.
CREATE TABLE opening_stock (
  location_id INTEGER NOT NULL REFERENCES location,
  part_id INTEGER NOT NULL REFERENCES part,
  quantity INTEGER NOT NULL CHECK (quantity >= 0),
  bin TEXT,
  PRIMARY KEY (location_id, part_id)
) STRICT, WITHOUT ROWID;

-- The ledger. A NULL location is the outside world, and the kind says which side of it.
CREATE TABLE movement (
  movement_id TEXT PRIMARY KEY CHECK (length(movement_id) = 36),
  kind TEXT NOT NULL CHECK (kind IN ('receipt', 'issue', 'transfer', 'return', 'adjustment')),
  part_id INTEGER NOT NULL REFERENCES part,
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  from_location_id INTEGER REFERENCES location,
  to_location_id INTEGER REFERENCES location,
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL,
  reason TEXT NOT NULL,
  reference TEXT,
  reverses TEXT UNIQUE REFERENCES movement,
  CHECK (from_location_id IS NOT NULL OR to_location_id IS NOT NULL),
  CHECK (from_location_id IS NOT to_location_id),
  CHECK ((kind = 'transfer') = (from_location_id IS NOT NULL AND to_location_id IS NOT NULL))
) STRICT, WITHOUT ROWID;
CREATE INDEX movement_out ON movement (from_location_id, part_id, quantity) WHERE from_location_id IS NOT NULL;
CREATE INDEX movement_in ON movement (to_location_id, part_id, quantity) WHERE to_location_id IS NOT NULL;
CREATE INDEX movement_of_part ON movement (part_id, from_location_id, to_location_id, quantity);
CREATE TRIGGER movement_is_never_edited BEFORE UPDATE ON movement
  BEGIN SELECT raise(ABORT, 'a movement is never edited: append one that reverses it'); END;
CREATE TRIGGER movement_is_never_deleted BEFORE DELETE ON movement
  BEGIN SELECT raise(ABORT, 'a movement is never deleted: append one that reverses it'); END;

CREATE TABLE usage (
  date TEXT NOT NULL,
  location_id INTEGER NOT NULL REFERENCES location,
  part_id INTEGER NOT NULL REFERENCES part,
  job TEXT NOT NULL,
  quantity INTEGER NOT NULL,
  PRIMARY KEY (part_id, date, location_id, job)
) STRICT, WITHOUT ROWID;

CREATE TABLE van_list (
  van_list_id INTEGER PRIMARY KEY,
  location_id INTEGER NOT NULL REFERENCES location,
  family_id INTEGER REFERENCES family,
  part_id INTEGER REFERENCES part,
  level INTEGER NOT NULL CHECK (level >= 0),
  CHECK ((family_id IS NULL) <> (part_id IS NULL))
) STRICT;
CREATE UNIQUE INDEX van_list_once ON van_list (location_id, ifnull(family_id, 0), ifnull(part_id, 0));

CREATE TABLE job (
  job TEXT PRIMARY KEY CHECK (job <> ''),
  date TEXT NOT NULL,
  location_id INTEGER REFERENCES location,
  brand_id INTEGER REFERENCES brand,
  model_id INTEGER REFERENCES model,
  symptom TEXT NOT NULL,
  finished_first_visit INTEGER CHECK (finished_first_visit IN (0, 1))
) STRICT, WITHOUT ROWID;

CREATE TABLE job_family (
  job TEXT NOT NULL REFERENCES job,
  family_id INTEGER NOT NULL REFERENCES family,
  PRIMARY KEY (job, family_id)
) STRICT, WITHOUT ROWID;
`
