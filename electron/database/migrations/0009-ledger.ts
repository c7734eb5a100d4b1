import { neverChanged } from './never-changed.ts'

/**
 * Movements in the order in which they came here (a van's arrive late, with ids of their own time), with the outside
 * place that they lead to or from, and what was paid. Balances are brought forward now and then, as in any book, so that
 * a place's stock is one balance and the few movements since; `verify` adds all of them up again.
 */
export const ledger = `
CREATE TABLE movement_in_order (
  arrival INTEGER PRIMARY KEY,
  movement_id TEXT NOT NULL UNIQUE CHECK (length(movement_id) = 36),
  kind TEXT NOT NULL CHECK (kind IN ('receipt', 'issue', 'transfer', 'return', 'adjustment')),
  part_id INTEGER NOT NULL REFERENCES part,
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  from_location_id INTEGER REFERENCES location,
  to_location_id INTEGER REFERENCES location,
  outside TEXT CHECK (outside IN ('supplier', 'customer', 'job', 'scrap', 'count', 'opening')),
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL,
  reason TEXT NOT NULL,
  reference TEXT,
  reverses TEXT UNIQUE REFERENCES movement_in_order (movement_id),
  -- A decimal in the shop's currency, for one piece; NULL is not known.
  unit_cost TEXT CHECK (unit_cost <> ''),
  used_before_booked INTEGER NOT NULL DEFAULT 0 CHECK (used_before_booked IN (0, 1)),
  CHECK (from_location_id IS NOT NULL OR to_location_id IS NOT NULL),
  CHECK (from_location_id IS NOT to_location_id),
  CHECK ((kind = 'transfer') = (from_location_id IS NOT NULL AND to_location_id IS NOT NULL)),
  CHECK ((kind = 'transfer') = (outside IS NULL))
) STRICT;
INSERT INTO movement_in_order (movement_id, kind, part_id, quantity, from_location_id, to_location_id, outside,
    recorded_at, device, initials, reason, reference, reverses)
  SELECT movement_id, kind, part_id, quantity, from_location_id, to_location_id,
    CASE WHEN kind = 'transfer' THEN NULL WHEN reason LIKE 'opening stock%' THEN 'opening'
      WHEN kind = 'receipt' THEN 'supplier' WHEN kind = 'adjustment' THEN 'count' ELSE 'customer' END,
    recorded_at, device, initials, reason, reference, reverses
  FROM movement ORDER BY movement_id;
DROP TABLE movement;
ALTER TABLE movement_in_order RENAME TO movement;
CREATE INDEX movement_out ON movement (from_location_id, part_id, recorded_at, quantity) WHERE from_location_id IS NOT NULL;
CREATE INDEX movement_in ON movement (to_location_id, part_id, recorded_at, quantity) WHERE to_location_id IS NOT NULL;
CREATE INDEX movement_of_part ON movement (part_id, movement_id, from_location_id, to_location_id, quantity);
CREATE INDEX movement_issued ON movement (recorded_at, part_id, quantity) WHERE kind = 'issue';
CREATE INDEX movement_with_cost ON movement (part_id, movement_id, unit_cost) WHERE unit_cost IS NOT NULL;
CREATE INDEX movement_for ON movement (reference, part_id) WHERE reference IS NOT NULL;

CREATE TABLE brought_forward (
  location_id INTEGER NOT NULL REFERENCES location,
  part_id INTEGER NOT NULL REFERENCES part,
  quantity INTEGER NOT NULL,
  PRIMARY KEY (location_id, part_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX brought_forward_of_part ON brought_forward (part_id, location_id, quantity);

-- The last movement whose quantity stands in the balances.
CREATE TABLE brought_forward_through (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  arrival INTEGER NOT NULL
) STRICT;
INSERT INTO brought_forward_through VALUES (1, 0);

-- Where a part lies within its location, as it was last put there; '' is in no bin.
CREATE TABLE bin (
  location_id INTEGER NOT NULL REFERENCES location,
  part_id INTEGER NOT NULL REFERENCES part,
  bin TEXT NOT NULL,
  PRIMARY KEY (location_id, part_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE reservation (
  reservation_id TEXT PRIMARY KEY CHECK (length(reservation_id) = 36),
  part_id INTEGER NOT NULL REFERENCES part,
  location_id INTEGER NOT NULL REFERENCES location,
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  held_for TEXT NOT NULL CHECK (held_for IN ('job', 'customer')),
  reference TEXT NOT NULL CHECK (reference <> ''),
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX reservation_of_part ON reservation (part_id, location_id);

CREATE TABLE reservation_end (
  reservation_id TEXT PRIMARY KEY REFERENCES reservation,
  how TEXT NOT NULL CHECK (how IN ('taken', 'released')),
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TRIGGER movement_is_never_edited BEFORE UPDATE ON movement
  BEGIN SELECT raise(ABORT, 'a movement is never edited: append one that reverses it'); END;
CREATE TRIGGER movement_is_never_deleted BEFORE DELETE ON movement
  BEGIN SELECT raise(ABORT, 'a movement is never deleted: append one that reverses it'); END;
${['reservation', 'reservation_end'].map(neverChanged).join('\n')}
`
