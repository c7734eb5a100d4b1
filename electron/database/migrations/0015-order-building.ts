/** How the shop builds its orders, which no catalogue says. */
export const orderBuilding = `
CREATE TABLE building_setting (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  -- The most that a week's orders may cost, as a decimal in the currency of most suppliers; NULL is no limit.
  budget TEXT CHECK (budget <> ''),
  uses_pattern_stock INTEGER NOT NULL CHECK (uses_pattern_stock IN (0, 1))
) STRICT;
INSERT INTO building_setting VALUES (1, NULL, 0);

CREATE TABLE preferred_supplier (
  part_id INTEGER PRIMARY KEY REFERENCES part,
  supplier_id INTEGER NOT NULL REFERENCES supplier
) STRICT;
`
