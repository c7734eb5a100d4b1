import { useMutation, useQueryClient } from '@tanstack/react-query'
import { type FormEvent, useState } from 'react'
import { AskProblem } from '../../bridge/ask-problem.ts'
import { ask } from '../../bridge/client.ts'
import type { SupplierList } from './use-supplier-list.ts'

/** Saves the match under the supplier's name, so that the next list of this kind needs none. */
export function KeepLayout({ list, initials }: { readonly list: SupplierList; readonly initials: string }) {
  const { state, change, draft, draftLikeness, missing } = list
  const [fault, setFault] = useState<string>()
  const client = useQueryClient()
  const save = useMutation({
    mutationFn: (replace: boolean) => {
      if (draft === null) throw new Error('a layout is saved once the file was read')
      return ask('catalogue.save-layout', {
        layout: draft,
        replace,
        ...(initials === '' ? {} : { initials }),
      })
    },
    networkMode: 'always',
    onSuccess: async ({ layout: { name } }) => {
      change({ layout: name, saved: { name, likeness: draftLikeness } })
      await client.invalidateQueries({ queryKey: ['catalogue.list-layouts'] })
      await client.invalidateQueries({ queryKey: ['catalogue.preview-file'] })
    },
  })
  const isTaken = save.error instanceof AskProblem && save.error.problem.code === 'layout-exists'
  const onSave = (replace: boolean) => {
    const fault = state.name.trim() === '' ? 'Name the layout, as after the supplier.' : missing
    setFault(fault)
    if (fault === undefined && !save.isPending) save.mutate(replace)
  }
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    onSave(false)
  }
  return (
    <form className="save-rejected" aria-label="Save the match" onSubmit={onSubmit}>
      <label htmlFor="layout-name">Save this match as</label>
      <input
        id="layout-name"
        className="text-field save-rejected__target"
        maxLength={60}
        autoComplete="off"
        value={state.name}
        onChange={event => change({ name: event.target.value })}
      />
      <button type="submit" className="order-button">
        Save it
      </button>
      {(fault !== undefined || save.error !== null) && (
        <div className="problem-note" role="alert">
          <p>{fault ?? save.error?.message}</p>
          {isTaken && (
            <button type="button" className="plain-button" onClick={() => onSave(true)}>
              Replace “{state.name.trim()}”
            </button>
          )}
        </div>
      )}
    </form>
  )
}
