import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { type FormEvent, useState } from 'react'
import type { Output } from '../../shared-schemas/index.ts'
import type { LedgerConflict } from '../../shared-schemas/stock-ledger.ts'
import { ask } from '../bridge/client.ts'
import { wordMoment } from '../shelves/shelf-words.ts'

/** The ledger carried between a van's machine and the shop's by a file, and what the two did without having heard of each other. */
export function OtherMachines() {
  const [file, setFile] = useState('')
  const queries = useQueryClient()
  const conflicts = useQuery({
    queryKey: ['stock', 'conflicts'],
    queryFn: () => ask('stock-ledger.list-conflicts', {}),
    staleTime: 0,
  })
  const carry = useMutation({
    mutationFn: async (way: 'write' | 'take-in') => {
      if (way === 'write') return wordWritten(await ask('stock-ledger.export-ledger', { file }))
      const taken = await ask('stock-ledger.import-ledger', { file })
      await queries.invalidateQueries()
      return wordTaken(taken)
    },
    networkMode: 'always',
  })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!carry.isPending) carry.mutate('take-in')
  }
  const found = conflicts.data?.conflicts ?? []
  return (
    <section aria-labelledby="other-machines">
      <h2 id="other-machines" className="stock-heading">
        Other machines of the shop
      </h2>
      <form className="stock-form" aria-label="Carry the ledger" onSubmit={onSubmit}>
        <div className="stock-form__field">
          <label htmlFor="ledger-file">File on this machine, or on a stick</label>
          <input
            id="ledger-file"
            className="text-field"
            required
            autoComplete="off"
            spellCheck={false}
            placeholder="/media/stick/van-1.ledger"
            value={file}
            onChange={event => setFile(event.target.value)}
          />
        </div>
        <button type="submit" className="order-button">
          Take the file in
        </button>
        <button
          type="button"
          className="order-button"
          onClick={() => {
            if (file.trim() !== '' && !carry.isPending) carry.mutate('write')
          }}
        >
          Write the file
        </button>
        <p className="stock-form__said" role="status">
          {carry.error === null ? (carry.data ?? '') : ''}
        </p>
        {(carry.error ?? conflicts.error) !== null && (
          <p className="problem-note" role="alert">
            {(carry.error ?? conflicts.error)?.message}
          </p>
        )}
      </form>
      {found.length > 0 && (
        <section className="problem-note" aria-label="Conflicts">
          <p className="problem-note__what">
            Machines worked without having heard of each other. {found.length} to look at:
          </p>
          <ul className="kept-list">
            {found.map(conflict => (
              <li key={JSON.stringify(conflict)}>{wordConflict(conflict)}</li>
            ))}
          </ul>
        </section>
      )}
    </section>
  )
}

function wordWritten({
  file,
  movements,
  reservations,
  records,
}: Output<'stock-ledger.export-ledger'>): string {
  return `Written to ${file}: ${movements} movements, ${reservations} reservations, ${records} records of counts, jobs, returns and codes. Take it in on the other machine.`
}

function wordTaken(taken: Output<'stock-ledger.import-ledger'>): string {
  const { movements, reservations, records, alreadyHere, belowZero } = taken
  const below = belowZero.map(
    ({ location, partNumber, quantity }) => `${partNumber} in ${location} (${quantity})`,
  )
  return [
    `Taken in: ${movements} movements, ${reservations} reservations, ${records} records; ${alreadyHere} were here already.`,
    ...(below.length === 0 ? [] : [`Below nothing since: ${below.join(', ')}. Count them.`]),
  ].join(' ')
}

function wordConflict(conflict: LedgerConflict): string {
  switch (conflict.kind) {
    case 'moved-before-count':
      return `${conflict.partNumber} in ${conflict.location}: counted on ${conflict.device} at ${wordMoment(conflict.countedAt)} against a book of ${conflict.bookThen}; by what has arrived since, it was ${conflict.bookNow}. Count it again.`
    case 'counted-twice':
      return `${conflict.partNumber} in ${conflict.location}: counted on two machines at once, and both booked what was off. Count it again.`
    case 'job-number-twice':
      return `Job ${conflict.job} was opened on ${conflict.devices.join(' and on ')}. Look whose parts are whose, and write down anew what the job is.`
  }
}
