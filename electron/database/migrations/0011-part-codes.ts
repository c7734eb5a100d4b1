import { neverChanged } from './never-changed.ts'

/**
 * Codes that staff attached to parts, and readings of a count that were taken back. The latest word on a code holds; the
 * earlier ones stay. A reading begins a round of counting unless it adds to the one before: scanning a part five times is
 * not counting it five times.
 */
export const partCodes = `
CREATE TABLE part_code (
  part_code_id TEXT PRIMARY KEY CHECK (length(part_code_id) = 36),
  -- A GTIN in fourteen digits, anything else as it was scanned.
  code TEXT NOT NULL CHECK (code <> ''),
  part_id INTEGER NOT NULL REFERENCES part,
  pieces INTEGER NOT NULL CHECK (pieces > 0),
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX part_code_of_code ON part_code (code, part_code_id);

ALTER TABLE count_reading ADD COLUMN begins INTEGER NOT NULL DEFAULT 1 CHECK (begins IN (0, 1));

CREATE TABLE count_reading_withdrawn (
  reading_id TEXT PRIMARY KEY REFERENCES count_reading,
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;
${['part_code', 'count_reading_withdrawn'].map(neverChanged).join('\n')}
`
