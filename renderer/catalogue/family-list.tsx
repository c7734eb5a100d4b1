import { type KeyboardEvent, type RefObject, useId, useState } from 'react'
import type { ListedFamily } from '../../shared-schemas/catalogue-lists.ts'
import { ask } from '../bridge/client.ts'
import { LongList } from '../components/long-list.tsx'
import { ProblemNote } from '../components/problem-note.tsx'
import { usePages } from '../components/use-pages.ts'
import { wordFamilies } from './word-families.ts'

interface FamilyListProps {
  readonly field: RefObject<HTMLInputElement | null>
  readonly chosen: string | null
  readonly onChoose: (family: string) => void
}

/** Every part family of the catalogue, narrowed by words. Arrows go from row to row, Enter chooses. */
export function FamilyList({ field, chosen, onChoose }: FamilyListProps) {
  const [words, setWords] = useState('')
  const id = useId()
  const wanted = words.trim()
  const { head, rowAt, onSight, problem, retry } = usePages({
    name: ['catalogue.list-families', wanted],
    askPage: (from, most) => ask('catalogue.list-families', { words: wanted, from, most }),
    rowsOf: ({ families }) => families,
  })
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys act for the rows inside, which are buttons
    <div className="catalogue__families" onKeyDown={event => walkRows(event, field.current)}>
      <label className="catalogue__find" htmlFor={id}>
        Find a part family
      </label>
      <input
        ref={field}
        id={id}
        className="text-field"
        autoComplete="off"
        maxLength={120}
        placeholder="drain pump, door"
        value={words}
        onChange={event => setWords(event.target.value)}
      />
      {problem !== null && (
        <ProblemNote problem={problem} kept="Nothing was changed by looking." onRetry={retry} />
      )}
      {head !== undefined && (
        <>
          <p className="model-sheet__count" role="status">
            {wordFamilies(head, wanted)}
          </p>
          <LongList
            key={wanted}
            label="Part families"
            count={head.matching}
            rowPixels={60}
            onSight={onSight}
            row={at => <FamilyRow family={rowAt(at)} chosen={chosen} onChoose={onChoose} />}
          />
        </>
      )}
    </div>
  )
}

interface FamilyRowProps {
  readonly family: ListedFamily | undefined
  readonly chosen: string | null
  readonly onChoose: (family: string) => void
}

function FamilyRow({ family, chosen, onChoose }: FamilyRowProps) {
  if (family === undefined) return <p>…</p>
  const { name, function: does, parts, safetyDevice } = family
  return (
    <button
      type="button"
      className="catalogue__family"
      aria-pressed={family.family === chosen}
      onClick={() => onChoose(family.family)}
    >
      <span className="catalogue__name">{name}</span>
      <span className="quiet">
        {[does, `${parts} ${parts === 1 ? 'part' : 'parts'}`, safetyDevice ? 'safety device' : '']
          .filter(Boolean)
          .join(' · ')}
      </span>
    </button>
  )
}

/** From the field into the list and on; the first row leads back. */
function walkRows(event: KeyboardEvent<HTMLElement>, field: HTMLInputElement | null): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
  const buttonAt = (at: number) =>
    event.currentTarget.querySelector<HTMLElement>(`[data-index="${at}"] button`)
  const row = document.activeElement?.closest('[data-index]')
  const step = event.key === 'ArrowDown' ? 1 : -1
  const next =
    row == null ? (step > 0 ? buttonAt(0) : null) : buttonAt(Number(row.getAttribute('data-index')) + step)
  const target = next ?? (step < 0 ? field : null)
  if (target === null) return
  event.preventDefault()
  target.focus()
}
