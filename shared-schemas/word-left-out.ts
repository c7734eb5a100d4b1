/** The files of a folder that were passed over, and what to do about it. */
export function wordLeftOut(names: readonly string[]): string {
  const [first, ...others] = names
  const which = others.length === 0 ? `${first} was` : `${names.join(', ')} were`
  return `${which} left out: no catalogue file is called so. Rename what belongs to the catalogue, or load a supplier’s own list by a layout.`
}
