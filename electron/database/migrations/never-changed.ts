/** Triggers that refuse to edit or delete what a table holds: what was recorded is corrected by recording more. */
export function neverChanged(table: string): string {
  return `CREATE TRIGGER ${table}_is_never_edited BEFORE UPDATE ON ${table}
  BEGIN SELECT raise(ABORT, 'what was recorded is never edited'); END;
CREATE TRIGGER ${table}_is_never_deleted BEFORE DELETE ON ${table}
  BEGIN SELECT raise(ABORT, 'what was recorded is never deleted'); END;`
}
