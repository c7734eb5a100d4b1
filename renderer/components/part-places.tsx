import type { FittingPart } from '../../shared-schemas/fit-check.ts'

/** Where a part lies: every place, its bin, and how many. */
export function PartPlaces({ onHand }: { readonly onHand: FittingPart['onHand'] }) {
  if (onHand.length === 0) return <span className="quiet">none on hand</span>
  return (
    <ul className="places">
      {onHand.map(({ location, name, bin, quantity }) => (
        <li key={location}>
          {quantity} in{' '}
          {bin === null ? (
            name
          ) : (
            <>
              <span className="number places__bin">{bin}</span> <span className="quiet">{location}</span>
            </>
          )}
        </li>
      ))}
    </ul>
  )
}
