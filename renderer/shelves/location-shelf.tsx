import { useQuery } from '@tanstack/react-query'
import { ask } from '../bridge/client.ts'
import { ScrollRegion } from '../components/scroll-region.tsx'
import { Ledger } from './ledger.tsx'
import { wordPieces } from './shelf-words.ts'
import { useOnOrder } from './use-on-order.ts'
import type { Asked } from './use-shelves.ts'

interface LocationShelfProps {
  readonly asked: Extract<Asked, { readonly about: 'location' }>
  readonly onPart: (part: Asked) => void
  readonly signed: { readonly initials?: string }
}

/** One location: all that lies there, bin by bin, what it is worth, and what happened there. */
export function LocationShelf({ asked: { location, name }, onPart, signed }: LocationShelfProps) {
  const held = useQuery({
    queryKey: ['stock', 'on-hand-in', location],
    queryFn: () => ask('stock-ledger.list-on-hand', { location }),
    staleTime: 0,
  })
  const worth = useQuery({
    queryKey: ['stock', 'value', location],
    queryFn: () => ask('stock-ledger.read-stock-value', { location }),
    staleTime: 0,
  })
  const due = useOnOrder()
  const onOrder = Map.groupBy(due.rows ?? [], row => row.partNumber)
  const open = async (partNumber: string) => {
    const { found } = await ask('stock-ledger.find-code', { code: partNumber })
    if (found.kind === 'part') onPart({ about: 'part', ...found })
  }
  const rows = (held.data?.rows ?? []).toSorted(
    (one, other) =>
      (one.bin ?? '\u{10ffff}').localeCompare(other.bin ?? '\u{10ffff}', 'en', { numeric: true }) ||
      one.partNumber.localeCompare(other.partNumber, 'en', { numeric: true }),
  )
  return (
    <section className="shelf" aria-labelledby="shelf">
      <h2 id="shelf" className="stock-sentence">
        {name} <span className="number">{location}</span>
      </h2>
      {worth.data !== undefined && (
        <p>
          {wordPieces(worth.data.pieces)} of {rows.length} parts, worth {worth.data.atLastCost} at what was
          last paid, {worth.data.atMovingAverage} at the moving average.
          {worth.data.piecesWithoutCost > 0 &&
            ` Of ${wordPieces(worth.data.piecesWithoutCost)} the book does not know what they cost.`}
        </p>
      )}
      {(held.error ?? worth.error ?? due.error) !== null && (
        <p className="problem-note" role="alert">
          {(held.error ?? worth.error ?? due.error)?.message}
        </p>
      )}
      <ScrollRegion label="What lies there" isTall>
        <table className="stock-table">
          <thead>
            <tr>
              <th scope="col">Bin</th>
              <th scope="col">Part</th>
              <th scope="col" className="stock-figure">
                On hand
              </th>
              <th scope="col" className="stock-figure">
                Kept
              </th>
              <th scope="col" className="stock-figure">
                On order
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ partNumber, bin, quantity, reserved }) => (
              <tr key={partNumber}>
                <td className="number">{bin}</td>
                <th scope="row">
                  <button
                    type="button"
                    className="link-button number stock-number"
                    onClick={() => void open(partNumber)}
                  >
                    {partNumber}
                  </button>
                </th>
                <td className="stock-figure">{quantity}</td>
                <td className="stock-figure">{reserved}</td>
                <td className="stock-figure">
                  {onOrder.get(partNumber)?.reduce((sum, row) => sum + row.quantity, 0) ?? 0}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      <Ledger about={{ location }} signed={signed} />
    </section>
  )
}
