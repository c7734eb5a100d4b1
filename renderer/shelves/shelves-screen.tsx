import { useMutation } from '@tanstack/react-query'
import { type FormEvent, useEffect, useRef } from 'react'
import type { FoundCode } from '../../shared-schemas/stock-ledger.ts'
import { ask } from '../bridge/client.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { type NamedScreen, TopLine } from '../components/top-line.tsx'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import { ScanLine } from '../scanning/scan-line.tsx'
import { ScannerPanel } from '../scanning/scanner-panel.tsx'
import { useScanned } from '../scanning/use-scanned.ts'
import { LocationShelf } from './location-shelf.tsx'
import { MoveForm } from './move-form.tsx'
import { PartShelf } from './part-shelf.tsx'
import { useMoves } from './use-moves.ts'
import { type Asked, useShelves } from './use-shelves.ts'

/** What is where: one field for a part or a location, a quick move beside it, and what was found on the right. */
export function ShelvesScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const shelves = useShelves()
  const moves = useMoves(shelves)
  const field = useRef<HTMLInputElement>(null)
  const { asked, show, locations } = shelves
  const { note, take, undo, forget } = useScanned({
    onPart: part => {
      show({ about: 'part', ...part })
      moves.choosePart(part.partNumber)
      return `${part.partNumber}. ${part.description}`
    },
    onLocation: location => {
      show({ about: 'location', ...location })
      return location.name
    },
    onUndo: moves.takeBack,
  })
  const focusField = () => {
    field.current?.focus()
    field.current?.select()
  }
  useScreenKeys({
    Escape: () => {
      forget()
      focusField()
    },
    F2: () => focusById('move-quantity'),
    F10: undo,
  })
  useEffect(focusField, [])
  return (
    <div className="counter">
      <TopLine screens={screens} shop={locations.find(({ kind }) => kind === 'shop')?.name ?? 'Tallyplate'} />
      <main className="stock-bench stock-bench--two">
        <h1 className="unseen">Shelves</h1>
        <div className="stock-side">
          <FindField
            field={field}
            typed={shelves.typed}
            onType={shelves.setTyped}
            onFound={found => {
              forget()
              show(found)
              if (found.about === 'part') moves.choosePart(found.partNumber)
            }}
          />
          <ScanLine note={note} onAttached={take} />
        </div>
        {asked === null && <NothingAsked />}
        {asked?.about === 'part' && <PartShelf key={asked.partNumber} asked={asked} shelves={shelves} />}
        {asked?.about === 'location' && (
          <LocationShelf key={asked.location} asked={asked} onPart={show} signed={shelves.signed} />
        )}
        <div className="stock-side">
          <MoveForm moves={moves} shelves={shelves} onUndo={undo} />
          <ScannerPanel locations={locations} />
        </div>
      </main>
    </div>
  )
}

function focusById(id: string): void {
  const field = document.getElementById(id)
  field?.focus()
  if (field instanceof HTMLInputElement) field.select()
}

interface FindFieldProps {
  readonly field: React.RefObject<HTMLInputElement | null>
  readonly typed: string
  readonly onType: (typed: string) => void
  readonly onFound: (found: Asked) => void
}

function FindField({ field, typed, onType, onFound }: FindFieldProps) {
  const find = useMutation({
    mutationFn: async () => asAsked((await ask('stock-ledger.find-code', { code: typed })).found, typed),
    networkMode: 'always',
    onSuccess: found => {
      onFound(found)
      field.current?.select()
    },
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (typed.trim() !== '' && !find.isPending) find.mutate()
  }
  return (
    <form onSubmit={onSubmit} aria-label="Find">
      <label htmlFor="shelf-field" className="draft__name">
        Part or location
      </label>
      <input
        ref={field}
        id="shelf-field"
        className="text-field number"
        autoComplete="off"
        spellCheck={false}
        maxLength={200}
        placeholder="number, van, or scan"
        value={typed}
        onChange={event => onType(event.target.value)}
      />
      <button type="submit" className="unseen">
        Find
      </button>
      {find.error !== null && (
        <p className="problem-note" role="alert">
          {find.error.message}
        </p>
      )}
    </form>
  )
}

/** Thrown like a refusal, so that it is told where refusals are. */
function asAsked(found: FoundCode, typed: string): Asked {
  if (found.kind === 'part') return { about: 'part', ...found }
  if (found.kind === 'location') return { about: 'location', ...found }
  throw new Error(
    `No part and no location is called “${typed.trim()}”. Check the number on its bag, or type the name of a van.`,
  )
}

function NothingAsked() {
  return (
    <section className="order-card__empty" aria-label="What is where">
      <h2 className="stock-sentence">Type a part number or a location, or scan one.</h2>
      <p>
        A part shows where it lies, in which bin, what is kept for whom, and everything that ever happened to
        it. A location shows all that lies there and what it is worth. <KeyHint>F2</KeyHint> moves pieces from
        one place to another.
      </p>
    </section>
  )
}
