/** Which layout a supplier's list was read by, as it was called then; NULL for catalogue files, and where it was not kept. */
export const layoutOfLoad = `
ALTER TABLE load_account ADD COLUMN layout TEXT CHECK (layout <> '');
`
