/**
 * What the fault guide says. A cause of a symptom is one row; a check belongs to an appliance type, and what its outcomes
 * say of a cause is kept by the cause's name, since the same cause stands behind several symptoms. Work that needs a
 * licence has no steps, so its advice is empty, and no check carries such a hazard.
 */
export const faultGuide = `
CREATE TABLE fault (
  fault_id INTEGER PRIMARY KEY,
  appliance_type TEXT NOT NULL CHECK (appliance_type <> ''),
  symptom TEXT NOT NULL CHECK (symptom <> ''),
  cause TEXT NOT NULL CHECK (cause <> ''),
  also_said TEXT NOT NULL,
  ends_in TEXT NOT NULL CHECK (ends_in IN ('part', 'no-part', 'normal', 'licensed')),
  licensed_for TEXT CHECK (licensed_for IN ('gas', 'sealed-refrigerant', 'microwave-hv', 'fixed-wiring')),
  weight REAL NOT NULL CHECK (weight > 0),
  advice TEXT NOT NULL,
  source TEXT,
  UNIQUE (appliance_type, symptom, cause),
  CHECK ((ends_in = 'licensed') = (licensed_for IS NOT NULL)),
  CHECK (ends_in <> 'licensed' OR advice = '')
) STRICT;

CREATE TABLE fault_family (
  fault_id INTEGER NOT NULL REFERENCES fault,
  family_id INTEGER NOT NULL REFERENCES family,
  PRIMARY KEY (fault_id, family_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX fault_family_of_family ON fault_family (family_id);

-- In the order of their ids: the order in which they were listed.
CREATE TABLE fault_check (
  fault_check_id INTEGER PRIMARY KEY,
  appliance_type TEXT NOT NULL CHECK (appliance_type <> ''),
  check_name TEXT NOT NULL CHECK (check_name <> ''),
  symptoms TEXT NOT NULL,
  how TEXT NOT NULL CHECK (how <> ''),
  measure TEXT,
  expected TEXT,
  tolerance TEXT,
  minutes REAL NOT NULL CHECK (minutes > 0),
  tools TEXT NOT NULL,
  competence TEXT NOT NULL CHECK (competence IN ('anyone', 'repairer', 'live-testing')),
  source TEXT,
  UNIQUE (appliance_type, check_name),
  CHECK ((measure IS NULL) = (expected IS NULL))
) STRICT;

CREATE TABLE fault_check_hazard (
  fault_check_id INTEGER NOT NULL REFERENCES fault_check,
  hazard TEXT NOT NULL CHECK (hazard IN ('mains', 'stored-charge', 'water', 'hot', 'sharp', 'moving')),
  PRIMARY KEY (fault_check_id, hazard)
) STRICT, WITHOUT ROWID;

-- How likely each outcome is where the cause lies elsewhere.
CREATE TABLE fault_check_outcome (
  fault_check_id INTEGER NOT NULL REFERENCES fault_check,
  place INTEGER NOT NULL CHECK (place >= 0),
  outcome TEXT NOT NULL CHECK (outcome <> ''),
  likelihood REAL NOT NULL CHECK (likelihood > 0 AND likelihood < 1),
  PRIMARY KEY (fault_check_id, place),
  UNIQUE (fault_check_id, outcome)
) STRICT, WITHOUT ROWID;

-- How likely each outcome is under a cause of which the check says more.
CREATE TABLE fault_outcome (
  fault_check_id INTEGER NOT NULL REFERENCES fault_check,
  cause TEXT NOT NULL CHECK (cause <> ''),
  outcome TEXT NOT NULL CHECK (outcome <> ''),
  likelihood REAL NOT NULL CHECK (likelihood > 0 AND likelihood < 1),
  PRIMARY KEY (fault_check_id, cause, outcome)
) STRICT, WITHOUT ROWID;

CREATE TABLE fitting_note (
  fitting_note_id INTEGER PRIMARY KEY,
  stage TEXT NOT NULL CHECK (stage IN ('before', 'fitting', 'test')),
  note TEXT NOT NULL CHECK (note <> ''),
  source TEXT,
  UNIQUE (stage, note)
) STRICT;

CREATE TABLE fitting_note_family (
  family_id INTEGER NOT NULL REFERENCES family,
  fitting_note_id INTEGER NOT NULL REFERENCES fitting_note,
  PRIMARY KEY (family_id, fitting_note_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX fitting_note_family_of_note ON fitting_note_family (fitting_note_id);
`
