/** What SQLite's integrity check found, on one line and without its own headings; nothing where the file is sound. */
export function wordIntegrityFault(checked: unknown): string | undefined {
  const found = String(checked)
  if (found === 'ok') return undefined
  return found
    .replaceAll(/\*\*\*[^*]*\*\*\*/g, '')
    .trim()
    .replaceAll(/\s*\n\s*/g, '; ')
}
