import { useQuery } from '@tanstack/react-query'
import { partLabel } from '../../shared-schemas/read-scan.ts'
import { ask } from '../bridge/client.ts'
import { LabelSheet } from '../scanning/label-sheet.tsx'
import { BinField } from './bin-field.tsx'
import { Ledger } from './ledger.tsx'
import { Reservations } from './reservations.tsx'
import { wordOnOrder, wordPieces } from './shelf-words.ts'
import { useOnOrder } from './use-on-order.ts'
import type { Asked, Shelves } from './use-shelves.ts'

interface PartShelfProps {
  readonly asked: Extract<Asked, { readonly about: 'part' }>
  readonly shelves: Shelves
}

/** One part: where it lies, for whom it is kept, and what happened to it. */
export function PartShelf({ asked: { partNumber, description }, shelves }: PartShelfProps) {
  const held = useQuery({
    queryKey: ['stock', 'on-hand', partNumber],
    queryFn: () => ask('stock-ledger.list-on-hand', { part: partNumber }),
    staleTime: 0,
  })
  const due = useOnOrder(partNumber)
  const rows = held.data?.rows ?? []
  const total = rows.reduce((sum, { quantity }) => sum + quantity, 0)
  const kept = rows.reduce((sum, { reserved }) => sum + reserved, 0)
  return (
    <section className="shelf" aria-labelledby="shelf">
      <h2 id="shelf" className="stock-sentence">
        <span className="number">{partNumber}</span> {description}
      </h2>
      {(held.error ?? due.error) !== null && (
        <p className="problem-note" role="alert">
          {(held.error ?? due.error)?.message}
        </p>
      )}
      {held.data !== undefined && (
        <p>
          {rows.length === 0
            ? 'None on hand anywhere.'
            : `${wordPieces(total)} in ${rows.length} ${rows.length === 1 ? 'place' : 'places'}${kept === 0 ? '' : `, ${kept} of them kept`}.`}{' '}
          {due.rows && wordOnOrder(due.rows)}{' '}
          <LabelSheet
            name="Its label…"
            labels={[{ title: partNumber, detail: description, code: partLabel(partNumber) }]}
          />
        </p>
      )}
      {rows.length > 0 && (
        <table className="stock-table" aria-label="Where it lies">
          <thead>
            <tr>
              <th scope="col">Place</th>
              <th scope="col">Bin</th>
              <th scope="col" className="stock-figure">
                On hand
              </th>
              <th scope="col" className="stock-figure">
                Kept
              </th>
              <th scope="col" className="stock-figure">
                Free
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ location, bin, quantity, reserved }) => (
              <tr key={location}>
                <th scope="row" className="number">
                  {location}
                </th>
                <td>
                  <BinField key={bin} part={partNumber} location={location} bin={bin} />
                </td>
                <td className="stock-figure">
                  {quantity}
                  {quantity < 0 && ' (used before booked)'}
                </td>
                <td className="stock-figure">{reserved}</td>
                <td className="stock-figure">{quantity - reserved}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <Reservations part={partNumber} places={rows.map(({ location }) => location)} signed={shelves.signed} />
      <Ledger about={{ part: partNumber }} signed={shelves.signed} />
    </section>
  )
}
