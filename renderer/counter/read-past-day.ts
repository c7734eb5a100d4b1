import { readMadeDate } from './read-made-date.ts'

export type ReadDay =
  | { readonly ok: true; readonly day: string }
  | { readonly ok: false; readonly problem: string }

/** A whole day up to today, typed as dates are printed here: `2026-11-23` or `23.11.2026`. */
export function readPastDay(typed: string, now: Date): ReadDay {
  const day = readMadeDate(typed)
  if (day === undefined || !isRealDay(day))
    return { ok: false, problem: 'Type a whole day: year, month, day, such as 2026-11-23.' }
  // Days are counted in UTC, as they are in everything that is recorded.
  if (day > now.toISOString().slice(0, 10))
    return { ok: false, problem: `${day} has not come yet. Type today or an earlier day.` }
  return { ok: true, day }
}

function isRealDay(day: string): boolean {
  const at = new Date(`${day}T00:00:00Z`)
  return day.length === 10 && !Number.isNaN(at.getTime()) && at.toISOString().startsWith(day)
}
