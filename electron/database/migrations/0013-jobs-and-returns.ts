import { neverChanged } from './never-changed.ts'

/**
 * What is written of a job, and of parts that come back. All of it is append-only and under ids that no two machines
 * share, so that a van's jobs are joined to the shop's like its movements. The latest sheet, and the latest word on what
 * is needed, hold; how many pieces were taken and brought back is summed from the ledger. `job` itself is written out of
 * the sheets, so that whatever reads the jobs of a file reads these too.
 */
export const jobsAndReturns = `
CREATE TABLE job_sheet (
  job_sheet_id TEXT PRIMARY KEY CHECK (length(job_sheet_id) = 36),
  job TEXT NOT NULL REFERENCES job,
  -- The sheet that opened the job. Two of them: two machines gave one number to two jobs.
  opens INTEGER NOT NULL CHECK (opens IN (0, 1)),
  date TEXT NOT NULL,
  location_id INTEGER REFERENCES location,
  -- As it was read off the plate, whole or not.
  model TEXT NOT NULL,
  brand TEXT CHECK (brand <> ''), made TEXT CHECK (made <> ''), serial TEXT CHECK (serial <> ''),
  volts TEXT CHECK (volts <> ''), hertz TEXT CHECK (hertz <> ''), watts TEXT CHECK (watts <> ''),
  -- A word of the shop's own by which it finds the customer; no name is needed.
  customer TEXT CHECK (customer <> ''),
  symptom TEXT NOT NULL,
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX job_sheet_of_job ON job_sheet (job, job_sheet_id);

CREATE TABLE job_need (
  job_need_id TEXT PRIMARY KEY CHECK (length(job_need_id) = 36),
  job TEXT NOT NULL REFERENCES job,
  family_id INTEGER REFERENCES family,
  part_id INTEGER REFERENCES part,
  -- 0: no longer needed.
  quantity INTEGER NOT NULL CHECK (quantity >= 0),
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL,
  CHECK ((family_id IS NULL) <> (part_id IS NULL))
) STRICT, WITHOUT ROWID;
CREATE INDEX job_need_of_job ON job_need (job, job_need_id);

CREATE TABLE job_fitting (
  job_fitting_id TEXT PRIMARY KEY CHECK (length(job_fitting_id) = 36),
  job TEXT NOT NULL REFERENCES job,
  part_id INTEGER NOT NULL REFERENCES part,
  -- Below 0: it was not fitted after all.
  quantity INTEGER NOT NULL CHECK (quantity <> 0),
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX job_fitting_of_job ON job_fitting (job, job_fitting_id);

CREATE TABLE job_visit (
  job_visit_id TEXT PRIMARY KEY CHECK (length(job_visit_id) = 36),
  job TEXT NOT NULL REFERENCES job,
  -- 'reopened' is no visit: the job was ended by mistake.
  outcome TEXT NOT NULL CHECK (outcome IN ('finished', 'not-finished', 'given-up', 'reopened')),
  -- Why it was not finished, or given up: a code of the trade's reasons; and in words whatever it does not say.
  why TEXT CHECK (why <> ''),
  note TEXT CHECK (note <> ''),
  -- What was wrong: the fault guide's key, or words, or neither.
  cause_key TEXT CHECK (cause_key <> ''),
  cause TEXT CHECK (cause <> ''),
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL,
  CHECK (outcome NOT IN ('not-finished', 'given-up') OR why IS NOT NULL)
) STRICT, WITHOUT ROWID;
CREATE INDEX job_visit_of_job ON job_visit (job, job_visit_id);

-- How many pieces, of what, from whom and why stands in the movement that brought them into quarantine.
CREATE TABLE part_return (
  part_return_id TEXT PRIMARY KEY CHECK (length(part_return_id) = 36),
  kind TEXT NOT NULL CHECK (kind IN ('unused', 'wrong-fit', 'faulty', 'exchange', 'for-supplier')),
  movement_id TEXT NOT NULL UNIQUE REFERENCES movement (movement_id),
  fit_record_id TEXT REFERENCES fit_record,
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE return_decision (
  return_decision_id TEXT PRIMARY KEY CHECK (length(return_decision_id) = 36),
  part_return_id TEXT NOT NULL REFERENCES part_return,
  way TEXT NOT NULL CHECK (way IN ('to-shelf', 'to-supplier', 'scrap')),
  movement_id TEXT NOT NULL UNIQUE REFERENCES movement (movement_id),
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX return_decision_of_return ON return_decision (part_return_id);

CREATE INDEX job_by_date ON job (date, job);
${['job_sheet', 'job_need', 'job_fitting', 'job_visit', 'part_return', 'return_decision'].map(neverChanged).join('\n')}
`
