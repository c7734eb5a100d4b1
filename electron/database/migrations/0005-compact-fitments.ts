import { neverChanged } from './never-changed.ts'

/** A gap between two ids as LEB128 in hexadecimal digits; ids are below 2^28. */
const gapAsHex = `CASE
  WHEN gap < 128 THEN printf('%02X', gap)
  WHEN gap < 16384 THEN printf('%02X%02X', gap & 127 | 128, gap >> 7)
  WHEN gap < 2097152 THEN printf('%02X%02X%02X', gap & 127 | 128, gap >> 7 & 127 | 128, gap >> 14)
  ELSE printf('%02X%02X%02X%02X', gap & 127 | 128, gap >> 7 & 127 | 128, gap >> 14 & 127 | 128, gap >> 21)
END`

/**
 * Which terms are said of which models, as lists of gaps in both directions: a few bytes a fitment where a row with its
 * index took some thirty. What was there is kept.
 */
export const compactFitments = `
-- Terms, ascending, as gaps from 0.
CREATE TABLE fitment_by_model (
  model_id INTEGER PRIMARY KEY REFERENCES model,
  terms BLOB NOT NULL CHECK (terms <> x'')
) STRICT;
INSERT INTO fitment_by_model
SELECT model_id, unhex(group_concat(${gapAsHex}, '' ORDER BY terms_id)) FROM (
  SELECT model_id, terms_id, terms_id - lag(terms_id, 1, 0) OVER (PARTITION BY model_id ORDER BY terms_id) AS gap
  FROM fitment)
GROUP BY model_id;

-- Models, ascending, in pieces that fit a page and are rewritten by a change: the first, then the others as gaps from it.
CREATE TABLE fitment_by_terms (
  terms_id INTEGER NOT NULL REFERENCES fitment_terms,
  first_model_id INTEGER NOT NULL,
  models INTEGER NOT NULL CHECK (models > 0),
  more_models BLOB NOT NULL,
  PRIMARY KEY (terms_id, first_model_id)
) STRICT, WITHOUT ROWID;
INSERT INTO fitment_by_terms
SELECT terms_id, min(model_id), count(*),
  unhex(ifnull(group_concat(CASE WHEN place % 200 > 0 THEN ${gapAsHex} END, '' ORDER BY model_id), ''))
FROM (
  SELECT terms_id, model_id, row_number() OVER of_terms - 1 AS place,
    model_id - lag(model_id, 1, 0) OVER of_terms AS gap
  FROM fitment WINDOW of_terms AS (PARTITION BY terms_id ORDER BY model_id))
GROUP BY terms_id, place / 200;
DROP TABLE fitment;

-- What one run said of a model, and what it withdrew: terms as above. Within one run a model may be covered by a
-- pattern and then be said otherwise of: so what was said stands before what was withdrawn. The run is written last.
CREATE TABLE compact_change (
  model_id INTEGER NOT NULL REFERENCES model,
  load_run_id INTEGER NOT NULL REFERENCES load_run DEFERRABLE INITIALLY DEFERRED,
  change TEXT NOT NULL CHECK (change IN ('said', 'withdrawn')),
  terms BLOB NOT NULL CHECK (terms <> x''),
  PRIMARY KEY (model_id, load_run_id, change)
) STRICT, WITHOUT ROWID;
INSERT INTO compact_change
SELECT model_id, load_run_id, change, unhex(group_concat(${gapAsHex}, '' ORDER BY terms_id)) FROM (
  SELECT model_id, load_run_id, change, terms_id,
    terms_id - lag(terms_id, 1, 0) OVER (PARTITION BY model_id, load_run_id, change ORDER BY terms_id) AS gap
  FROM fitment_change)
GROUP BY model_id, load_run_id, change;
DROP TABLE fitment_change;
ALTER TABLE compact_change RENAME TO fitment_change;
CREATE INDEX fitment_change_of_run ON fitment_change (load_run_id, model_id);
${neverChanged('fitment_change')}
`
