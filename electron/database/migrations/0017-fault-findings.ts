import { neverChanged } from './never-changed.ts'

/**
 * What the fault guide proposed for a job, as it stood when it was kept, so that it can be held against what was fitted
 * in the end. Families and causes are kept as written: a later guide may no longer have them.
 */
export const faultFindings = `
CREATE TABLE fault_finding (
  fault_finding_id TEXT PRIMARY KEY CHECK (length(fault_finding_id) = 36),
  job TEXT NOT NULL CHECK (job <> ''),
  appliance_type TEXT NOT NULL CHECK (appliance_type <> ''),
  symptom TEXT NOT NULL CHECK (symptom <> ''),
  -- What was proposed first; null where the guide could not tell.
  ends_in TEXT CHECK (ends_in IN ('part', 'no-part', 'normal', 'licensed')),
  probability REAL CHECK (probability BETWEEN 0 AND 1),
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL,
  CHECK ((ends_in IS NULL) = (probability IS NULL))
) STRICT, WITHOUT ROWID;
CREATE INDEX fault_finding_of_job ON fault_finding (job, fault_finding_id);

CREATE TABLE fault_finding_cause (
  fault_finding_id TEXT NOT NULL REFERENCES fault_finding,
  place INTEGER NOT NULL CHECK (place >= 0),
  cause TEXT NOT NULL CHECK (cause <> ''),
  PRIMARY KEY (fault_finding_id, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE fault_finding_family (
  fault_finding_id TEXT NOT NULL REFERENCES fault_finding,
  family TEXT NOT NULL CHECK (family <> ''),
  PRIMARY KEY (fault_finding_id, family)
) STRICT, WITHOUT ROWID;

CREATE TABLE fault_finding_answer (
  fault_finding_id TEXT NOT NULL REFERENCES fault_finding,
  place INTEGER NOT NULL CHECK (place >= 0),
  check_name TEXT NOT NULL CHECK (check_name <> ''),
  -- Null: skipped, or it could not be told.
  outcome TEXT CHECK (outcome <> ''),
  measured TEXT CHECK (measured <> ''),
  PRIMARY KEY (fault_finding_id, place)
) STRICT, WITHOUT ROWID;
${['fault_finding', 'fault_finding_cause', 'fault_finding_family', 'fault_finding_answer'].map(neverChanged).join('\n')}
`
