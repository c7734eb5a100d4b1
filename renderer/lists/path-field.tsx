import { useQuery } from '@tanstack/react-query'
import { type KeyboardEvent, type RefObject, useState } from 'react'
import type { Output } from '../../shared-schemas/index.ts'
import { ask } from '../bridge/client.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { useSettled } from '../components/use-settled.ts'
import { wordSize } from './word-figures.ts'

type FolderList = Output<'catalogue.list-folder'>
type Entry = FolderList['entries'][number]

/** What the path names, once it was taken. */
export interface ChosenList {
  readonly path: string
  readonly kind: 'catalogue' | 'supplier'
}

interface PathFieldProps {
  readonly field: RefObject<HTMLInputElement | null>
  readonly typed: string
  readonly onType: (typed: string) => void
  readonly onTake: (chosen: ChosenList) => void
}

/** The path of the list, typed or pasted, with what stands in the folder so far. Enter takes it. */
export function PathField({ field, typed, onType, onTake }: PathFieldProps) {
  const [isOpen, setOpen] = useState(false)
  const [at, setAt] = useState(-1)
  const [fault, setFault] = useState('')
  const settled = useSettled(typed, 120)
  const found = useQuery({
    queryKey: ['catalogue.list-folder', settled],
    queryFn: () => ask('catalogue.list-folder', { typed: settled }),
    enabled: isOpen,
    staleTime: 0,
    placeholderData: before => before,
  })
  const entries = isOpen && found.error === null ? (found.data?.entries ?? []) : []
  const active = entries[at]
  const type = (next: string) => {
    setAt(-1)
    setFault('')
    setOpen(true)
    onType(next)
  }
  const take = (chosen: ChosenList) => {
    setOpen(false)
    setAt(-1)
    setFault('')
    onType(chosen.path)
    onTake(chosen)
  }
  const choose = (entry: Entry) => {
    if (entry.kind === 'folder') return type(entry.path)
    take({ path: entry.path, kind: entry.kind === 'catalogue-file' ? 'catalogue' : 'supplier' })
  }
  const takeTyped = async () => {
    const answer = await settleTyped(typed)
    if (typeof answer === 'string') {
      setFault(answer)
      setOpen(true)
    } else take(answer)
  }
  const act = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.nativeEvent.isComposing) return
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault()
      if (!isOpen) return setOpen(true)
      const step = event.key === 'ArrowDown' ? 1 : -1
      const next = Math.min(Math.max(at + step, -1), entries.length - 1)
      setAt(next)
      document.getElementById(`list-path-${next}`)?.scrollIntoView({ block: 'nearest' })
    } else if (event.key === 'Enter') {
      event.preventDefault()
      if (active !== undefined) choose(active)
      else void takeTyped()
    }
  }
  return (
    <div className="path-field">
      <label className="draft__name" htmlFor="list-path">
        File or folder <KeyHint>Esc</KeyHint>
      </label>
      <p className="quiet" id="list-path-help">
        Type or paste a path; arrows choose, Enter opens a folder or takes a list. A folder of catalogue files
        is taken as a whole.
      </p>
      <input
        ref={field}
        id="list-path"
        className="text-field number path-field__input"
        role="combobox"
        aria-expanded={isOpen && entries.length > 0}
        aria-controls="list-path-entries"
        aria-autocomplete="list"
        aria-activedescendant={active === undefined ? undefined : `list-path-${at}`}
        aria-describedby="list-path-help"
        placeholder="Your own folder"
        spellCheck={false}
        autoComplete="off"
        value={typed}
        onChange={event => type(event.target.value)}
        onFocus={() => setOpen(true)}
        onBlur={() => setOpen(false)}
        onKeyDown={act}
      />
      {fault !== '' && (
        <p className="problem-note" role="alert">
          {fault}
        </p>
      )}
      <div
        id="list-path-entries"
        className="path-field__entries"
        role="listbox"
        aria-label="In this folder"
        hidden={!isOpen || entries.length === 0}
      >
        {entries.map((entry, index) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the field has the focus and the keys, as a combobox does
          <div
            key={entry.path}
            id={`list-path-${index}`}
            className="path-field__entry"
            role="option"
            tabIndex={-1}
            aria-selected={index === at}
            // The field keeps the focus.
            onMouseDown={event => event.preventDefault()}
            onClick={() => choose(entry)}
          >
            <span className="number">{entry.name}</span> <span className="quiet">{wordEntry(entry)}</span>
          </div>
        ))}
      </div>
      {isOpen && <p className="quiet path-field__told">{tellFolder(found.data, found.error, typed)}</p>}
    </div>
  )
}

/** What Enter takes when nothing is chosen below, or why nothing can be. */
async function settleTyped(typed: string): Promise<ChosenList | string> {
  try {
    const { named, folder } = await ask('catalogue.list-folder', { typed, most: 1 })
    if (named === null)
      return `Nothing that can be loaded stands at that path. Choose from what is in ${folder}: .csv, .tsv, .txt or .xlsx.`
    if (named.kind === 'supplier-file') return { path: named.path, kind: 'supplier' }
    if (named.kind === 'folder' && named.catalogueFiles === 0)
      return `${named.path} holds no catalogue file such as models.csv. Open a supplier's file in it by its name.`
    return { path: named.path, kind: 'catalogue' }
  } catch (problem) {
    if (problem instanceof Error) return problem.message
    throw problem
  }
}

function wordEntry({ kind, bytes }: Entry): string {
  if (kind === 'folder') return 'folder'
  return `${kind === 'catalogue-file' ? 'catalogue file' : 'list'}, ${wordSize(bytes ?? 0)}`
}

function tellFolder(found: FolderList | undefined, error: Error | null, typed: string): string {
  if (error !== null) return error.message
  if (found === undefined) return ''
  const { named, entries, left, folder } = found
  const more = left > 0 ? ` ${left} more begin like that; type on.` : ''
  if (named?.kind === 'folder' && named.catalogueFiles > 0)
    return `Enter takes the ${named.catalogueFiles} catalogue ${named.catalogueFiles === 1 ? 'file' : 'files'} in ${named.path}.${more}`
  if (entries.length === 0)
    return typed.trim() === '' || named !== null
      ? `Nothing in ${named?.path ?? folder} can be loaded.`
      : `Nothing in ${folder} begins like that.`
  return `In ${folder}.${more}`
}
