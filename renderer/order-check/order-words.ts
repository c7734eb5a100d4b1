import type { CheckedLine, CheckedOrder, OrderFlag, Severity } from '../../shared-schemas/order-check.ts'

export const severities: readonly Severity[] = ['stop', 'caution', 'note']

export const severityNames: Readonly<Record<Severity, string>> = {
  stop: 'Stops',
  caution: 'Cautions',
  note: 'Notes',
}

/** What the order comes to, and what to do next. */
export function wordOrder({ lines, stops, cautions }: CheckedOrder): string {
  const counted = `${count(lines.length, 'line')}: ${count(stops, 'stop')}, ${count(cautions, 'caution')}.`
  if (stops > 0) return `${counted} Mend the stops before the order is sent.`
  return cautions > 0
    ? `${counted} Nothing stops this order; look at the cautions first.`
    : `${counted} Nothing stops this order.`
}

export function count(number: number, what: string): string {
  return `${number.toLocaleString('en')} ${what}${number === 1 ? '' : 's'}`
}

/** How many findings of one kind a line has, in words; nothing where there are none. */
export function wordFindings({ flags }: CheckedLine, severity: Severity): string {
  const found = flags.filter(flag => flag.severity === severity).length
  return found === 0 ? '' : count(found, severity)
}

export function flagsOf({ flags }: CheckedLine, severity: Severity): readonly OrderFlag[] {
  return flags.filter(flag => flag.severity === severity)
}

/** The next line with a stop after the one that is open, round to the first again. */
export function nextStop(lines: readonly CheckedLine[], openLine: number | null): CheckedLine | undefined {
  const stopped = lines.filter(line => wordFindings(line, 'stop') !== '')
  const at = lines.findIndex(({ line }) => line === openLine)
  return stopped.find(line => lines.indexOf(line) > at) ?? stopped[0]
}
