/** How each supplier's own file is read and matched to a catalogue file, by name. */
export const supplierLayouts = `
CREATE TABLE layout (
  layout_id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  -- The name in small letters, so that two layouts never differ in letter case alone.
  name_key TEXT NOT NULL UNIQUE CHECK (name_key <> ''),
  feeds TEXT NOT NULL CHECK (feeds <> ''),
  -- Null: looked for in each file, which is refused where that is not certain.
  encoding TEXT, separator TEXT, sheet TEXT,
  -- Null: the file has no headings.
  header_row INTEGER CHECK (header_row >= 1),
  shape TEXT NOT NULL CHECK (shape IN ('long', 'wide-cell', 'wide-columns')),
  -- Which column of ours the many models of one row fill.
  wide_column TEXT CHECK ((wide_column IS NULL) = (shape = 'long')),
  saved_at TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT;

CREATE TABLE layout_heading (
  layout_id INTEGER NOT NULL REFERENCES layout ON DELETE CASCADE,
  place INTEGER NOT NULL,
  heading TEXT NOT NULL,
  is_wide INTEGER NOT NULL CHECK (is_wide IN (0, 1)),
  PRIMARY KEY (layout_id, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE layout_column (
  layout_id INTEGER NOT NULL REFERENCES layout ON DELETE CASCADE,
  place INTEGER NOT NULL,
  column_name TEXT NOT NULL,
  heading TEXT,
  constant TEXT CHECK ((constant IS NULL) <> (heading IS NULL)),
  decimal_sign TEXT CHECK (decimal_sign IN ('.', ',')),
  thousands INTEGER NOT NULL CHECK (thousands IN (0, 1)),
  date_order TEXT CHECK (date_order IN ('ymd', 'dmy', 'mdy')),
  PRIMARY KEY (layout_id, place),
  UNIQUE (layout_id, column_name)
) STRICT, WITHOUT ROWID;

CREATE TABLE layout_word (
  layout_id INTEGER NOT NULL,
  column_place INTEGER NOT NULL,
  place INTEGER NOT NULL,
  theirs TEXT NOT NULL,
  ours TEXT NOT NULL,
  PRIMARY KEY (layout_id, column_place, place),
  FOREIGN KEY (layout_id, column_place) REFERENCES layout_column ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE layout_model_separator (
  layout_id INTEGER NOT NULL REFERENCES layout ON DELETE CASCADE,
  place INTEGER NOT NULL,
  separator TEXT NOT NULL CHECK (separator <> ''),
  PRIMARY KEY (layout_id, place)
) STRICT, WITHOUT ROWID;
`
