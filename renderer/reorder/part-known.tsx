import { useQuery } from '@tanstack/react-query'
import type { ProposedLine } from '../../shared-schemas/proposal.ts'
import type { PartKnown } from '../../shared-schemas/reorder-settings.ts'
import { ask } from '../bridge/client.ts'
import { wordMoney } from '../components/word-money.ts'
import { PartUses } from './part-uses.tsx'
import { ShelfLimit } from './shelf-limit.tsx'
import type { PartChange } from './use-part-changes.ts'

interface PartKnownProps {
  readonly line: ProposedLine
  readonly initials: string
  readonly onChange: (change: PartChange) => void
}

/** What the buyer knows of a part better than its history: who it is ordered from, what its shelf holds, odd jobs. */
export function PartKnownPanel({ line, initials, onChange }: PartKnownProps) {
  const { partNumber } = line
  const known = useQuery({
    queryKey: ['reorder.read-part', partNumber],
    queryFn: () => ask('reorder.read-part', { part: partNumber }),
    staleTime: 0,
  })
  if (known.error !== null)
    return (
      <p className="problem-note" role="alert">
        {known.error.message}
      </p>
    )
  if (known.data === undefined) return null
  return (
    <>
      <Suppliers line={line} known={known.data} onChange={onChange} />
      <ShelfLimit key={known.data.shelfLimit} known={known.data} onChange={onChange} />
      <PartUses known={known.data} initials={initials} onChange={onChange} />
    </>
  )
}

interface SuppliersProps {
  readonly line: ProposedLine
  readonly known: PartKnown
  readonly onChange: (change: PartChange) => void
}

function Suppliers({ line: { elsewhere }, known, onChange }: SuppliersProps) {
  const { partNumber, preferredSupplier } = known
  const others = elsewhere.filter(({ supplier }) => supplier !== preferredSupplier)
  if (others.length === 0 && preferredSupplier === null) return null
  const prefer = (supplier: string | null) =>
    onChange({
      words:
        supplier === null
          ? `${partNumber} is ordered from whoever is best.`
          : `${partNumber} is always ordered from ${supplier}.`,
      make: () => ask('proposal.prefer-supplier', { part: partNumber, supplier }),
      takeBack: () => ask('proposal.prefer-supplier', { part: partNumber, supplier: preferredSupplier }),
    })
  return (
    <ul className="reorder-elsewhere">
      {preferredSupplier !== null && (
        <li>
          It is always ordered from {preferredSupplier} while that offers it.{' '}
          <button type="button" className="plain-button" onClick={() => prefer(null)}>
            Order it from whoever is best
          </button>
        </li>
      )}
      {others.map(other => (
        <li key={other.supplier}>
          {other.supplier} asks {wordMoney({ ...other, price: other.unitPrice })}.{' '}
          <button type="button" className="plain-button" onClick={() => prefer(other.supplier)}>
            Always order it from {other.supplier}
          </button>
        </li>
      ))}
    </ul>
  )
}
