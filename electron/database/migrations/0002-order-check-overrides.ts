/**
 * Why a stop of the order check was let pass, by whom and when. Parts and models are kept as keys of what was
 * written, not as references: a stop may be about a part that the catalogue does not have. Unread is ''.
 */
export const orderCheckOverrides = `
CREATE TABLE order_check_override (
  override_id TEXT PRIMARY KEY CHECK (length(override_id) = 36),
  part_key TEXT NOT NULL CHECK (part_key <> ''),
  part_number TEXT NOT NULL,
  brand_key TEXT NOT NULL,
  model_key TEXT NOT NULL,
  made TEXT NOT NULL,
  serial TEXT NOT NULL,
  supplier TEXT NOT NULL,
  code TEXT NOT NULL CHECK (code <> ''),
  reason TEXT NOT NULL CHECK (trim(reason) <> ''),
  initials TEXT NOT NULL CHECK (trim(initials) <> ''),
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX order_check_override_of_part ON order_check_override (part_key, recorded_at);
CREATE TRIGGER order_check_override_is_never_edited BEFORE UPDATE ON order_check_override
  BEGIN SELECT raise(ABORT, 'an override is never edited: record another one'); END;
CREATE TRIGGER order_check_override_is_never_deleted BEFORE DELETE ON order_check_override
  BEGIN SELECT raise(ABORT, 'an override is never deleted'); END;
`
