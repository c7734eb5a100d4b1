import type { FittingFamily, FittingPart } from '../../shared-schemas/fit-check.ts'
import { CautionList } from '../components/caution-list.tsx'
import { VerdictWord } from '../components/verdict-word.tsx'
import { wordMoney } from '../components/word-money.ts'
import { groupParts } from './group-parts.ts'
import { PartGroup } from './part-group.tsx'

interface FamilyRowProps {
  readonly family: FittingFamily
  /** Locations that are shelves of the shop, where a bin needs no further word. */
  readonly shops: ReadonlySet<string>
  readonly isOpen: boolean
  readonly onToggle: () => void
  readonly onWhy: (part: string) => void
}

/** One family in one line; opened, it shows every part with its reasons, and the cautions. */
export function FamilyRow({ family, shops, isOpen, onToggle, onWhy }: FamilyRowProps) {
  const { name, verdict, quantityPerAppliance, positions, parts, cautions } = family
  const [best] = parts
  const detailId = `family-${family.family}`
  return (
    <li className={`family family--${verdict}`} data-open={isOpen || undefined}>
      <button
        type="button"
        className="family__line"
        data-family-line
        data-why-part={best?.partNumber}
        aria-keyshortcuts={best === undefined ? undefined : 'F9'}
        aria-expanded={isOpen}
        aria-controls={isOpen ? detailId : undefined}
        onClick={onToggle}
      >
        <span className="family__name">{name}</span>
        <VerdictWord verdict={verdict} />
        <Takes quantity={quantityPerAppliance} positions={positions} />
        <span className="family__part">
          {best !== undefined && <span className="number family__number">{best.partNumber}</span>}
          {parts.length > 1 && <span className="family__more">+{parts.length - 1}</span>}
        </span>
        <span className="family__place">
          {best !== undefined && <NearestPlace part={best} shops={shops} />}
        </span>
        <span className="family__price">{best?.price == null ? '' : wordMoney(best.price)}</span>
      </button>
      {isOpen && (
        <div className="family__detail" id={detailId}>
          <CautionList cautions={cautions} />
          <ul className="family__parts">
            {groupParts(parts).map(group => (
              <PartGroup key={group.shared.partNumber} group={group} onWhy={onWhy} />
            ))}
          </ul>
        </div>
      )}
    </li>
  )
}

function Takes({
  quantity,
  positions,
}: {
  readonly quantity: number | null
  readonly positions: readonly string[]
}) {
  if (quantity === null) return <span className="family__takes" />
  return (
    <span className={`family__takes${quantity > 1 ? ' family__takes--several' : ''}`}>
      <span className="family__takes-word">takes </span>
      {quantity}
      {positions.length > 1 && <span className="family__positions"> {positions.join(', ')}</span>}
    </span>
  )
}

/** The first place is the nearest: the shop's own shelves come before the vans. */
function NearestPlace({
  part: { onHand },
  shops,
}: {
  readonly part: FittingPart
  readonly shops: ReadonlySet<string>
}) {
  const [nearest, ...others] = onHand
  if (nearest === undefined) return <span className="family__none">none on hand</span>
  const elsewhere = others.reduce((sum, { quantity }) => sum + quantity, 0)
  return (
    <>
      <span className="family__quantity">{nearest.quantity} in</span>{' '}
      <span className="number family__bin">
        {shops.has(nearest.location) ? (nearest.bin ?? nearest.name) : nearest.location}
      </span>
      {elsewhere > 0 && <span className="family__quantity"> +{elsewhere}</span>}
    </>
  )
}
