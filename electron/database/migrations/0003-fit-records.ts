import { neverChanged } from './never-changed.ts'

/**
 * What happened after a part was sold, and what the catalogue said when. All of it is append-only: a return is settled
 * by a further row, and a statement that was taken back keeps its words.
 */
export const fitRecords = `
CREATE TABLE fit_record (
  record_id TEXT PRIMARY KEY CHECK (length(record_id) = 36),
  kind TEXT NOT NULL CHECK (kind IN ('confirmed', 'wrong-fit')),
  model_id INTEGER NOT NULL REFERENCES model,
  part_id INTEGER NOT NULL REFERENCES part,
  job TEXT CHECK (job <> ''),
  reason TEXT CHECK (reason <> ''),
  initials TEXT NOT NULL CHECK (initials <> ''),
  recorded_at TEXT NOT NULL,
  CHECK (kind <> 'confirmed' OR job IS NOT NULL),
  CHECK (kind <> 'wrong-fit' OR reason IS NOT NULL)
) STRICT, WITHOUT ROWID;
CREATE INDEX fit_record_of_part ON fit_record (part_id, model_id);

CREATE TABLE fit_record_settled (
  record_id TEXT PRIMARY KEY REFERENCES fit_record,
  how TEXT NOT NULL CHECK (how <> ''),
  initials TEXT NOT NULL CHECK (initials <> ''),
  settled_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TRIGGER only_a_wrong_fit_is_settled BEFORE INSERT ON fit_record_settled
  WHEN NOT EXISTS (SELECT 1 FROM fit_record WHERE record_id = NEW.record_id AND kind = 'wrong-fit')
  BEGIN SELECT raise(ABORT, 'only a wrong fit is settled'); END;

-- One row for each load that changed something, and for each correction made in the program: that has a reason
-- where a load has its path. In the run that brought the first fitments, they have no changes of their own.
CREATE TABLE load_run (
  load_run_id INTEGER PRIMARY KEY,
  loaded_at TEXT NOT NULL,
  path TEXT, correction_reason TEXT CHECK (correction_reason <> ''),
  added INTEGER NOT NULL, changed INTEGER NOT NULL, unchanged INTEGER NOT NULL, rejected INTEGER NOT NULL,
  first_fitments INTEGER NOT NULL CHECK (first_fitments IN (0, 1)),
  CHECK ((path IS NULL) <> (correction_reason IS NULL))
) STRICT;
CREATE UNIQUE INDEX load_run_of_first_fitments ON load_run (first_fitments) WHERE first_fitments = 1;

-- Terms named here are kept though nothing is said on them any more. Within one run a model may be covered by a
-- pattern and then be said otherwise of: so what was said stands before what was withdrawn. The run is written last.
CREATE TABLE fitment_change (
  model_id INTEGER NOT NULL REFERENCES model,
  terms_id INTEGER NOT NULL REFERENCES fitment_terms,
  load_run_id INTEGER NOT NULL REFERENCES load_run DEFERRABLE INITIALLY DEFERRED,
  change TEXT NOT NULL CHECK (change IN ('said', 'withdrawn')),
  PRIMARY KEY (model_id, terms_id, load_run_id, change)
) STRICT, WITHOUT ROWID;
CREATE INDEX fitment_change_of_terms ON fitment_change (terms_id);

${['fit_record', 'fit_record_settled', 'load_run', 'fitment_change'].map(neverChanged).join('\n')}
`
