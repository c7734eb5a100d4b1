/**
 * A number for a new job that no other machine gives: the day, and four characters drawn from a fresh id. Machines that
 * cannot hear each other need nobody to give numbers out.
 */
export function makeJobNumber(now: Date, newId: string): string {
  const two = (figure: number) => String(figure).padStart(2, '0')
  const day = `${two(now.getFullYear() % 100)}${two(now.getMonth() + 1)}${two(now.getDate())}`
  let rest = Number.parseInt(newId.slice(-12), 16)
  let drawn = ''
  for (let at = 0; at < drawnCharacters; at++) {
    drawn += unlikeEachOther[rest % unlikeEachOther.length]
    rest = Math.floor(rest / unlikeEachOther.length)
  }
  return `${day}-${drawn}`
}

const drawnCharacters = 4
/** Without 0 O Q D, 1 I L, 2 Z, 5 S, 6 G and 8 B, which look alike when they are written by hand. */
const unlikeEachOther = 'ACEFHJKMNPRTUVWXY3479'
