import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { ask } from '../bridge/client.ts'
import { askAnew } from './ask-anew.ts'
import { KeptField, KeptForm } from './kept-form.tsx'
import { readReckoning, type TypedReckoning, writeReckoning } from './read-reckoning.ts'

/** How often is ordered, how long a supplier takes of whom nothing is known, and what ordering and keeping cost. */
export function ReckoningForm() {
  const queries = useQueryClient()
  const [changed, setChanged] = useState<Partial<TypedReckoning>>({})
  const read = useQuery({ queryKey, queryFn: () => ask('reorder.read-settings', {}) })
  if (read.data === undefined) return read.error === null ? null : <p role="alert">{read.error.message}</p>
  const shown = { ...writeReckoning(read.data), ...changed }
  const reckoning = readReckoning(shown)
  return (
    <KeptForm
      label="What every proposal is reckoned with"
      fault={reckoning.ok ? undefined : reckoning.fault}
      isChanged={Object.keys(changed).length > 0}
      onKeep={async () => {
        if (!reckoning.ok) return
        queries.setQueryData(queryKey, await ask('reorder.change-settings', reckoning.settings))
        setChanged({})
        await askAnew(queries)
      }}
    >
      {fields.map(([field, label]) => (
        <KeptField
          key={field}
          label={label}
          longest={12}
          inputMode="decimal"
          placeholder={field === 'lineCost' ? 'none' : ''}
          value={shown[field]}
          onChange={value => setChanged(before => ({ ...before, [field]: value }))}
        />
      ))}
    </KeptForm>
  )
}

const queryKey = ['reorder.read-settings']

const fields: readonly (readonly [field: keyof TypedReckoning, label: string])[] = [
  ['reviewDays', 'Days from one order to the next'],
  ['leadDays', 'Days a new supplier takes'],
  ['lineCost', 'What a line of an order costs'],
  ['holdingRate', 'What keeping costs, % a year'],
]
