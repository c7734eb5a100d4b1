import { neverChanged } from './never-changed.ts'

/**
 * Stock-takes. Each reading is fixed against the book of its own moment, so that what is booked meanwhile is no variance;
 * a recount is a further reading. What explains a variance is written down before the count is posted.
 */
export const stockCounts = `
CREATE TABLE stock_count (
  count_id TEXT PRIMARY KEY CHECK (length(count_id) = 36),
  location_id INTEGER NOT NULL REFERENCES location,
  begun_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX stock_count_of_location ON stock_count (location_id, begun_at);

CREATE TABLE count_reading (
  reading_id TEXT PRIMARY KEY CHECK (length(reading_id) = 36),
  count_id TEXT NOT NULL REFERENCES stock_count,
  part_id INTEGER NOT NULL REFERENCES part,
  counted INTEGER NOT NULL CHECK (counted >= 0),
  book INTEGER NOT NULL,
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX count_reading_of_part ON count_reading (count_id, part_id, reading_id);

CREATE TABLE count_explanation (
  explanation_id TEXT PRIMARY KEY CHECK (length(explanation_id) = 36),
  count_id TEXT NOT NULL REFERENCES stock_count,
  part_id INTEGER NOT NULL REFERENCES part,
  kind TEXT NOT NULL CHECK (kind IN ('swap', 'replaced-number', 'job-line', 'transfer', 'pack', 'digits', 'loss', 'find')),
  -- The other part of a swap, the job, the movement or the words that go with the kind.
  detail TEXT NOT NULL,
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX count_explanation_of_part ON count_explanation (count_id, part_id, explanation_id);

CREATE TABLE count_posting (
  count_id TEXT PRIMARY KEY REFERENCES stock_count,
  posted_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL,
  lines INTEGER NOT NULL, lines_within INTEGER NOT NULL,
  value_gained TEXT NOT NULL, value_lost TEXT NOT NULL
) STRICT, WITHOUT ROWID;
${['stock_count', 'count_reading', 'count_explanation', 'count_posting'].map(neverChanged).join('\n')}
`
