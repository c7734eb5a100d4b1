import { neverChanged } from './never-changed.ts'

/**
 * What a person knows about reordering that no history tells: the aim, jobs whose parts will not be asked for again, and
 * how many of a part its shelf holds. A job that was marked is unmarked by a further row.
 */
export const reorderSettings = `
CREATE TABLE reorder_setting (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  fill_rate REAL NOT NULL CHECK (fill_rate BETWEEN 0.5 AND 0.999),
  review_days INTEGER NOT NULL CHECK (review_days > 0),
  -- For a supplier that states no lead time and has not delivered yet.
  lead_days INTEGER NOT NULL CHECK (lead_days >= 0),
  -- What one line of an order costs to write, receive and put away, as a decimal; NULL orders what is needed and no more.
  line_cost TEXT CHECK (line_cost <> ''),
  -- What it costs to keep a piece for a year, as a share of its price.
  holding_rate REAL NOT NULL CHECK (holding_rate > 0)
) STRICT;
INSERT INTO reorder_setting VALUES (1, 0.95, 7, 7, NULL, 0.25);

CREATE TABLE shelf_limit (
  part_id INTEGER PRIMARY KEY REFERENCES part,
  pieces INTEGER NOT NULL CHECK (pieces >= 0)
) STRICT;

CREATE TABLE one_off_mark (
  mark_id TEXT PRIMARY KEY CHECK (length(mark_id) = 36),
  -- The reference of a movement, or the job of imported usage.
  reference TEXT NOT NULL CHECK (reference <> ''),
  is_one_off INTEGER NOT NULL CHECK (is_one_off IN (0, 1)),
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX one_off_mark_of_reference ON one_off_mark (reference, mark_id);
${neverChanged('one_off_mark')}
`
