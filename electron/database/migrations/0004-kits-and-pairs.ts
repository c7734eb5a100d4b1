/**
 * What stands in a kit, which is a part with a number of its own, and what is replaced together. Of a part with
 * itself the quantity is the whole number to fit, so that it is never one.
 */
export const kitsAndPairs = `
CREATE TABLE kit_content (
  kit_part_id INTEGER NOT NULL REFERENCES part,
  part_id INTEGER NOT NULL REFERENCES part,
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  PRIMARY KEY (kit_part_id, part_id),
  CHECK (kit_part_id <> part_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX kit_content_of_part ON kit_content (part_id);

CREATE TABLE replaced_together (
  part_id INTEGER NOT NULL REFERENCES part,
  with_part_id INTEGER NOT NULL REFERENCES part,
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  why TEXT CHECK (why <> ''),
  PRIMARY KEY (part_id, with_part_id),
  CHECK (part_id <> with_part_id OR quantity > 1)
) STRICT, WITHOUT ROWID;
`
