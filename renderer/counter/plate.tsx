import type { ReactNode } from 'react'

interface PlateProps {
  readonly brand: string
  readonly brands: readonly string[]
  /** The maker and the kind of the one model it came to. */
  readonly decided: { readonly brand: string; readonly applianceType: string } | undefined
  readonly isBrandAsked: boolean
  readonly onBrand: (brand: string) => void
  readonly number: ReactNode
  /** What stands under the number: the question, or what the look-up came to. */
  readonly line: ReactNode
  readonly fields: ReactNode
}

/** The rating plate, drawn: maker, number, and the readings that a plate has a place for. */
export function Plate({ brand, brands, decided, isBrandAsked, onBrand, number, line, fields }: PlateProps) {
  return (
    <section className="plate" aria-label="Rating plate">
      <div className="plate__head">
        <label className={`plate__maker${isBrandAsked ? ' plate__maker--asked' : ''}`}>
          <span className="plate__caption">{isBrandAsked ? 'Maker (asked for)' : 'Maker'}</span>
          <select className="plate__brand" value={brand} onChange={event => onBrand(event.target.value)}>
            <option value="">{decided?.brand ?? 'Any maker'}</option>
            {brands.map(name => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
        </label>
        {decided !== undefined && <p className="plate__type">{decided.applianceType}</p>}
      </div>
      {number}
      <div className="plate__line" id="plate-line">
        {line}
      </div>
      {fields}
    </section>
  )
}
