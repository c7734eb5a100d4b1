import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { type FormEvent, useId, useState } from 'react'
import type { SavedLayout } from '../../shared-schemas/supplier-layouts.ts'
import { ask } from '../bridge/client.ts'
import { ProblemNote } from '../components/problem-note.tsx'
import { wordMoment } from './word-figures.ts'

/** The layouts that were saved, to be renamed or removed. What was loaded by one stays. */
export function SavedLayouts() {
  const { data, error, refetch } = useQuery({
    queryKey: ['catalogue.list-layouts'],
    queryFn: () => ask('catalogue.list-layouts', {}),
    staleTime: 0,
  })
  const [told, setTold] = useState('')
  const layouts = data?.layouts ?? []
  if (layouts.length === 0 && told === '' && error === null) return null
  return (
    <section aria-label="Saved layouts" className="loads">
      <h2 className="order-card__sentence">Saved layouts</h2>
      <p role="status">{told}</p>
      {error !== null && (
        <ProblemNote problem={error} kept="Nothing was changed." onRetry={() => void refetch()} />
      )}
      <ul className="loads__list">
        {layouts.map(layout => (
          <li key={layout.name} className="loads__entry saved-layout">
            <LayoutEntry layout={layout} onTold={setTold} />
          </li>
        ))}
      </ul>
    </section>
  )
}

interface LayoutEntryProps {
  readonly layout: SavedLayout
  readonly onTold: (words: string) => void
}

function LayoutEntry({ layout: { name, feeds, savedAt, initials }, onTold }: LayoutEntryProps) {
  const [doing, setDoing] = useState<'rename' | 'remove'>()
  const stop = () => setDoing(undefined)
  return (
    <>
      <p className="saved-layout__name">
        <strong>{name}</strong>{' '}
        <span className="quiet">
          for {feeds}, saved {wordMoment(savedAt)}
          {initials !== '' && `, ${initials.toUpperCase()}`}
        </span>
      </p>
      {doing === undefined && (
        <p className="saved-layout__acts">
          <button type="button" className="plain-button" onClick={() => setDoing('rename')}>
            Rename<span className="unseen"> {name}</span>…
          </button>{' '}
          <button type="button" className="plain-button" onClick={() => setDoing('remove')}>
            Remove<span className="unseen"> {name}</span>…
          </button>
        </p>
      )}
      {doing === 'rename' && <RenameLayout name={name} onTold={onTold} onLeave={stop} />}
      {doing === 'remove' && <RemoveLayout name={name} onTold={onTold} onLeave={stop} />}
    </>
  )
}

interface LayoutActProps {
  readonly name: string
  readonly onTold: (words: string) => void
  readonly onLeave: () => void
}

function RenameLayout({ name, onTold, onLeave }: LayoutActProps) {
  const [newName, setNewName] = useState(name)
  const id = useId()
  const changed = useLayoutsChanged()
  const rename = useMutation({
    mutationFn: () => ask('catalogue.rename-layout', { name, newName }),
    networkMode: 'always',
    onSuccess: async ({ layout }) => {
      onTold(`“${name}” is now called “${layout.name}”.`)
      await changed()
    },
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (newName.trim() === name) onLeave()
    else if (newName.trim() !== '' && !rename.isPending) rename.mutate()
  }
  return (
    <form className="let-pass" aria-label={`Rename ${name}`} onSubmit={onSubmit}>
      <label htmlFor={id}>New name</label>
      <input
        id={id}
        className="text-field"
        // biome-ignore lint/a11y/noAutofocus: the person has just asked for this very field
        autoFocus
        required
        maxLength={60}
        value={newName}
        onChange={event => setNewName(event.target.value)}
      />
      <LayoutActs act="Rename" problem={rename.error} onLeave={onLeave} />
    </form>
  )
}

function RemoveLayout({ name, onTold, onLeave }: LayoutActProps) {
  const changed = useLayoutsChanged()
  const remove = useMutation({
    mutationFn: () => ask('catalogue.remove-layout', { name }),
    networkMode: 'always',
    onSuccess: async () => {
      onTold(`“${name}” was removed. What was loaded by it stays.`)
      await changed()
    },
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!remove.isPending) remove.mutate()
  }
  return (
    <form className="let-pass" aria-label={`Remove ${name}`} onSubmit={onSubmit}>
      <p>What was loaded by it stays. The next such list has to be matched anew.</p>
      <LayoutActs act="Remove it" isFirst={true} problem={remove.error} onLeave={onLeave} />
    </form>
  )
}

interface LayoutActsProps {
  readonly act: string
  readonly isFirst?: boolean
  readonly problem: Error | null
  readonly onLeave: () => void
}

function LayoutActs({ act, isFirst = false, problem, onLeave }: LayoutActsProps) {
  return (
    <>
      <p className="saved-layout__acts">
        <button
          type="submit"
          className="plain-button"
          // biome-ignore lint/a11y/noAutofocus: the person has just asked for this very step
          autoFocus={isFirst}
        >
          {act}
        </button>{' '}
        <button type="button" className="plain-button" onClick={onLeave}>
          Leave it
        </button>
      </p>
      {problem !== null && (
        <p className="problem-note" role="alert">
          {problem.message}
        </p>
      )}
    </>
  )
}

/** Every place that names layouts looks again. */
function useLayoutsChanged() {
  const client = useQueryClient()
  return async () => {
    await client.invalidateQueries({ queryKey: ['catalogue.list-layouts'] })
    await client.invalidateQueries({ queryKey: ['catalogue.preview-file'] })
  }
}
