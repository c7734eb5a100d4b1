import { neverChanged } from './never-changed.ts'

/**
 * What each load did to each row of the catalogue, so that it can be shown and undone as a whole. Fitments keep their
 * own changes. The changes of one run stand together, and are named by the first and the last of them.
 */
export const loadLog = `
CREATE TABLE load_change (
  change_id INTEGER PRIMARY KEY,
  change TEXT NOT NULL CHECK (change IN ('added', 'changed', 'removed')),
  table_name TEXT NOT NULL,
  -- The primary key, and all columns as they were before, each as a JSON array in the order of the table.
  row_key TEXT NOT NULL,
  before TEXT CHECK ((before IS NULL) = (change = 'added'))
) STRICT;

-- Who loaded, and what was undone by it. A correction made in the program has none of this.
CREATE TABLE load_account (
  load_run_id INTEGER PRIMARY KEY REFERENCES load_run,
  initials TEXT NOT NULL,
  device TEXT NOT NULL,
  first_change INTEGER NOT NULL,
  last_change INTEGER NOT NULL,
  undoes INTEGER UNIQUE REFERENCES load_run
) STRICT;

CREATE TABLE loaded_file (
  load_run_id INTEGER NOT NULL REFERENCES load_run,
  file TEXT NOT NULL,
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  bytes INTEGER NOT NULL,
  added INTEGER NOT NULL, changed INTEGER NOT NULL, unchanged INTEGER NOT NULL,
  retired INTEGER NOT NULL, rejected INTEGER NOT NULL,
  PRIMARY KEY (load_run_id, file)
) STRICT, WITHOUT ROWID;

-- What was said of a model or part that an undone load had brought goes with it.
DROP TRIGGER fitment_change_is_never_deleted;

${['load_change', 'load_account', 'loaded_file'].map(neverChanged).join('\n')}
`
