import { neverChanged } from './never-changed.ts'

/**
 * Order sheets. A sheet says how far a person has brought it (`stage`); what has come of it is summed from the receipts,
 * each of which is a movement of the ledger, so that taking a movement back makes its pieces due again. Lines change in
 * a draft only; what was sent is kept as the very files that the supplier got.
 */
export const orderSheets = `
CREATE TABLE order_sheet (
  order_sheet_id INTEGER PRIMARY KEY,
  -- Year and running number without a gap, such as 2026-0007: a sheet is cancelled, never deleted.
  number TEXT NOT NULL UNIQUE CHECK (number <> ''),
  year INTEGER NOT NULL CHECK (year BETWEEN 2000 AND 9999),
  serial INTEGER NOT NULL CHECK (serial > 0),
  supplier_id INTEGER NOT NULL REFERENCES supplier,
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  carriage TEXT NOT NULL CHECK (carriage <> ''),
  -- 1 where a person said what the carriage is; else it follows the supplier's terms until the sheet is checked.
  carriage_is_given INTEGER NOT NULL CHECK (carriage_is_given IN (0, 1)),
  stage TEXT NOT NULL CHECK (stage IN ('draft', 'checked', 'sent', 'cancelled')),
  UNIQUE (year, serial)
) STRICT;
CREATE INDEX order_sheet_of_stage ON order_sheet (stage, order_sheet_id);

CREATE TABLE order_sheet_line (
  order_sheet_id INTEGER NOT NULL REFERENCES order_sheet,
  line INTEGER NOT NULL CHECK (line > 0),
  part_id INTEGER NOT NULL REFERENCES part,
  supplier_code TEXT CHECK (supplier_code <> ''),
  -- In pieces, as is the price.
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  pack INTEGER NOT NULL CHECK (pack > 0),
  unit_price TEXT NOT NULL CHECK (unit_price <> ''),
  -- The appliance, job and customer that it is for; NULL is for stock.
  brand TEXT, model_number TEXT, made TEXT, serial TEXT, job TEXT, customer TEXT,
  PRIMARY KEY (order_sheet_id, line)
) STRICT, WITHOUT ROWID;
CREATE INDEX order_sheet_line_of_part ON order_sheet_line (part_id, order_sheet_id);

-- Stops that somebody let pass, as the check of the sheet found them.
CREATE TABLE order_sheet_override (
  order_sheet_id INTEGER NOT NULL,
  line INTEGER NOT NULL,
  code TEXT NOT NULL CHECK (code <> ''),
  reason TEXT NOT NULL CHECK (trim(reason) <> ''),
  initials TEXT NOT NULL CHECK (trim(initials) <> ''),
  recorded_at TEXT NOT NULL,
  PRIMARY KEY (order_sheet_id, line, code),
  FOREIGN KEY (order_sheet_id, line) REFERENCES order_sheet_line
) STRICT, WITHOUT ROWID;

CREATE TABLE order_sheet_event (
  event_id INTEGER PRIMARY KEY,
  order_sheet_id INTEGER NOT NULL REFERENCES order_sheet,
  what TEXT NOT NULL CHECK (what IN ('drafted', 'changed', 'checked', 'reopened', 'sent', 'cancelled')),
  reason TEXT NOT NULL,
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT;
CREATE INDEX order_sheet_event_of_sheet ON order_sheet_event (order_sheet_id, event_id);

-- The files as they were sent.
CREATE TABLE order_sheet_file (
  order_sheet_id INTEGER NOT NULL REFERENCES order_sheet,
  name TEXT NOT NULL CHECK (name <> ''),
  bytes BLOB NOT NULL,
  PRIMARY KEY (order_sheet_id, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE goods_receipt (
  receipt_id TEXT PRIMARY KEY CHECK (length(receipt_id) = 36),
  order_sheet_id INTEGER NOT NULL REFERENCES order_sheet,
  -- The number of the delivery note; '' where none came.
  delivery_note TEXT NOT NULL,
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX goods_receipt_of_sheet ON goods_receipt (order_sheet_id, receipt_id);

-- For which line a movement came in. What came, how many and at what price, the movement says: another part is a substitute.
CREATE TABLE goods_receipt_line (
  movement_id TEXT PRIMARY KEY REFERENCES movement (movement_id),
  receipt_id TEXT NOT NULL REFERENCES goods_receipt,
  order_sheet_id INTEGER NOT NULL,
  line INTEGER NOT NULL,
  condition TEXT NOT NULL CHECK (condition IN ('good', 'damaged')),
  FOREIGN KEY (order_sheet_id, line) REFERENCES order_sheet_line
) STRICT, WITHOUT ROWID;
CREATE INDEX goods_receipt_line_of_line ON goods_receipt_line (order_sheet_id, line);
CREATE INDEX goods_receipt_line_of_receipt ON goods_receipt_line (receipt_id);

-- Pieces of a line that will not come any more, and why; below 0 they are expected again.
CREATE TABLE order_line_closing (
  closing_id TEXT PRIMARY KEY CHECK (length(closing_id) = 36),
  order_sheet_id INTEGER NOT NULL,
  line INTEGER NOT NULL,
  pieces INTEGER NOT NULL CHECK (pieces <> 0),
  reason TEXT NOT NULL CHECK (trim(reason) <> ''),
  recorded_at TEXT NOT NULL,
  device TEXT NOT NULL,
  initials TEXT NOT NULL,
  FOREIGN KEY (order_sheet_id, line) REFERENCES order_sheet_line
) STRICT, WITHOUT ROWID;
CREATE INDEX order_line_closing_of_line ON order_line_closing (order_sheet_id, line);

-- Who orders, as the sheets name it; '' is not said.
CREATE TABLE buyer (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  name TEXT NOT NULL CHECK (trim(name) <> ''),
  street TEXT NOT NULL, town TEXT NOT NULL, postcode TEXT NOT NULL,
  country TEXT NOT NULL CHECK (country = '' OR country GLOB '[A-Z][A-Z]'),
  telephone TEXT NOT NULL, email TEXT NOT NULL
) STRICT;

-- How a supplier wants its orders: under which account, and its own columns of a CSV. Without columns, ours.
CREATE TABLE supplier_ordering (
  supplier_id INTEGER PRIMARY KEY REFERENCES supplier,
  account TEXT NOT NULL,
  separator TEXT NOT NULL CHECK (separator IN (',', ';', char(9), '|')),
  decimal_sign TEXT NOT NULL CHECK (decimal_sign IN ('.', ',')),
  date_order TEXT NOT NULL CHECK (date_order IN ('ymd', 'dmy', 'mdy'))
) STRICT;

CREATE TABLE supplier_order_column (
  supplier_id INTEGER NOT NULL REFERENCES supplier_ordering ON DELETE CASCADE,
  place INTEGER NOT NULL CHECK (place > 0),
  heading TEXT NOT NULL,
  holds TEXT NOT NULL CHECK (holds <> ''),
  PRIMARY KEY (supplier_id, place)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER order_sheet_is_never_deleted BEFORE DELETE ON order_sheet
  BEGIN SELECT raise(ABORT, 'an order sheet is never deleted: cancel it'); END;
CREATE TRIGGER order_sheet_stays_what_it_is BEFORE UPDATE ON order_sheet
  WHEN (OLD.order_sheet_id, OLD.number, OLD.year, OLD.serial, OLD.supplier_id, OLD.currency)
    IS NOT (NEW.order_sheet_id, NEW.number, NEW.year, NEW.serial, NEW.supplier_id, NEW.currency)
  BEGIN SELECT raise(ABORT, 'number, supplier and currency of an order sheet stay'); END;
CREATE TRIGGER order_sheet_goes_its_way BEFORE UPDATE ON order_sheet
  WHEN OLD.stage || ' ' || NEW.stage NOT IN ('draft draft', 'draft checked', 'checked draft', 'checked sent',
    'draft cancelled', 'checked cancelled', 'sent cancelled')
  BEGIN SELECT raise(ABORT, 'an order sheet does not go from this stage to that'); END;
CREATE TRIGGER order_sheet_carriage_is_checked BEFORE UPDATE ON order_sheet
  WHEN OLD.stage <> 'draft' AND (OLD.carriage, OLD.carriage_is_given) IS NOT (NEW.carriage, NEW.carriage_is_given)
  BEGIN SELECT raise(ABORT, 'only a draft changes'); END;
${['order_sheet_line', 'order_sheet_override'].map(changesInDraftOnly).join('\n')}
CREATE TRIGGER order_sheet_file_is_of_sending BEFORE INSERT ON order_sheet_file
  WHEN (SELECT stage FROM order_sheet WHERE order_sheet_id = NEW.order_sheet_id) IS NOT 'checked'
  BEGIN SELECT raise(ABORT, 'files are kept when a checked sheet is sent'); END;
${['order_sheet_event', 'order_sheet_file', 'goods_receipt', 'goods_receipt_line', 'order_line_closing'].map(neverChanged).join('\n')}
`

function changesInDraftOnly(table: string): string {
  const ways = [
    ['INSERT', 'NEW'],
    ['UPDATE', 'OLD'],
    ['DELETE', 'OLD'],
  ] as const
  return ways
    .map(
      ([way, row]) => `CREATE TRIGGER ${table}_${way.toLowerCase()}s_in_draft_only BEFORE ${way} ON ${table}
  WHEN (SELECT stage FROM order_sheet WHERE order_sheet_id = ${row}.order_sheet_id) IS NOT 'draft'
  BEGIN SELECT raise(ABORT, 'only a draft changes'); END;`,
    )
    .join('\n')
}
