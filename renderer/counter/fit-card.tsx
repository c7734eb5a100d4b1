import { type KeyboardEvent, memo, type RefObject } from 'react'
import type { FittingFamily } from '../../shared-schemas/fit-check.ts'
import { FamilyRow } from './family-row.tsx'
import { groupFamilies } from './group-families.ts'
import { askWhyOfRow } from './row-why.tsx'

interface FitCardProps {
  readonly families: readonly FittingFamily[]
  readonly shops: ReadonlySet<string>
  readonly openFamily: string | null
  readonly isStale: boolean
  readonly filterField: RefObject<HTMLInputElement | null>
  readonly onOpen: (family: string | null) => void
  readonly onWhy: (part: string) => void
}

/**
 * What fits, in groups by what it does. Arrows go from line to line; the first one leads back to the filter. F9 opens
 * the reasoning of the line's part.
 * Drawn anew only when something of it changes: a key in the plate must not wait for a long list.
 */
export const FitCard = memo(function FitCard({
  families,
  shops,
  openFamily,
  isStale,
  filterField,
  onOpen,
  onWhy,
}: FitCardProps) {
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys act for the lines inside, which are buttons
    <div
      className="fit-list"
      data-stale={isStale || undefined}
      aria-busy={isStale}
      onKeyDown={event => {
        walkLines(event, filterField.current)
        askWhyOfRow(event, onWhy)
      }}
    >
      <ColumnNames />
      {groupFamilies(families).map(group => (
        <section key={group.function} className="fit-group" aria-label={group.function}>
          <h3 className="fit-group__function">{group.function}</h3>
          <ul className="fit-group__families">
            {group.families.map(family => (
              <FamilyRow
                key={family.family}
                family={family}
                shops={shops}
                isOpen={family.family === openFamily}
                onWhy={onWhy}
                onToggle={() => onOpen(family.family === openFamily ? null : family.family)}
              />
            ))}
          </ul>
        </section>
      ))}
    </div>
  )
})

/** Names of the columns for the eye; each line says its own words to a screen reader. */
function ColumnNames() {
  return (
    <div className="fit-columns" aria-hidden="true">
      <span>Family</span>
      <span />
      <span>Takes</span>
      <span>Part</span>
      <span>Nearest</span>
      <span className="fit-columns__price">We pay</span>
    </div>
  )
}

/** The lines in the order in which they stand. */
export function familyLines(within: ParentNode = document): HTMLElement[] {
  return [...within.querySelectorAll<HTMLElement>('[data-family-line]')]
}

function walkLines(event: KeyboardEvent<HTMLElement>, filterField: HTMLInputElement | null): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
  const lines = familyLines(event.currentTarget)
  const at = lines.findIndex(line => line.contains(document.activeElement))
  if (at < 0) return
  event.preventDefault()
  const next = event.key === 'ArrowDown' ? lines[at + 1] : at === 0 ? filterField : lines[at - 1]
  next?.focus()
}
