import { useEffect } from 'react'
import { type NamedScreen, TopLine } from '../components/top-line.tsx'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import { ScanLine } from '../scanning/scan-line.tsx'
import { useScanned } from '../scanning/use-scanned.ts'
import { ReturnLine } from './return-line.tsx'
import { TakeReturn } from './take-return.tsx'
import { useReturns } from './use-returns.ts'

/** Parts that come back: taken into quarantine on the left, decided about on the right. */
export function ReturnsScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const returns = useReturns()
  const { note, take, undo, forget } = useScanned({
    onPart: ({ partNumber, pieces, description }) => {
      returns.change({ part: partNumber, quantity: String(pieces) })
      return `${partNumber}. ${description}`
    },
    onLocation: ({ location, name }) => {
      returns.change({ kind: 'for-supplier', from: location })
      return `Off ${name}, for the supplier.`
    },
    onUndo: returns.takeBack,
  })
  useScreenKeys({
    Escape: () => {
      forget()
      focusField('#return-part')
    },
    F2: () => focusField('#return-part'),
    F6: () => focusField('[data-undecided] button'),
    F10: undo,
  })
  useEffect(() => focusField('#return-part'), [])
  const { list, locations, state, setState } = returns
  const found = list.data?.returns ?? []
  return (
    <div className="counter">
      <TopLine screens={screens} shop={locations.find(({ kind }) => kind === 'shop')?.name ?? 'Tallyplate'} />
      <main className="stock-bench stock-bench--two return-bench">
        <h1 className="unseen">Returns</h1>
        <div className="stock-side">
          <ScanLine note={note} onAttached={take} />
        </div>
        <section className="shelf" aria-labelledby="return-list">
          <h2 id="return-list" className="stock-sentence">
            {state === 'all' ? 'Everything that came back' : wordWaiting(found.length)}
          </h2>
          <p>
            <label>
              <input
                type="checkbox"
                checked={state === 'all'}
                onChange={event => setState(event.target.checked ? 'all' : 'undecided')}
              />{' '}
              Show what is decided too
            </label>
          </p>
          {list.error !== null && (
            <p className="problem-note" role="alert">
              {list.error.message}
            </p>
          )}
          <ul className="variances">
            {found.map(one => (
              <ReturnLine key={one.returnId} one={one} returns={returns} />
            ))}
          </ul>
        </section>
        <div className="stock-side">
          <TakeReturn returns={returns} onUndo={undo} />
        </div>
      </main>
    </div>
  )
}

function wordWaiting(many: number): string {
  if (many === 0) return 'Nothing in quarantine waits for a decision.'
  return `${many} ${many === 1 ? 'return waits' : 'returns wait'} for a decision.`
}

function focusField(selector: string): void {
  const field = document.querySelector<HTMLElement>(`.return-bench ${selector}`)
  field?.focus()
  if (field instanceof HTMLInputElement) field.select()
}
