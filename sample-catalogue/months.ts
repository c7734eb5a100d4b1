/** `2014-06` as a count of months, so that months can be added and compared. */
export function monthCount(month: string): number {
  return Number(month.slice(0, 4)) * 12 + Number(month.slice(5, 7)) - 1
}

export function monthText(count: number): string {
  return `${Math.floor(count / 12)}-${String((count % 12) + 1).padStart(2, '0')}`
}

/** The day that lies so many days after another, both as `2026-11-22`. Reckoned in UTC: no clock change shifts it. */
export function dayAfter(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10)
}
