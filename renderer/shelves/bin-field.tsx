import { type FormEvent, useState } from 'react'
import { ask } from '../bridge/client.ts'
import { useStockChange } from './use-stock-change.ts'

interface BinFieldProps {
  readonly part: string
  readonly location: string
  readonly bin: string | null
}

/** In which bin a part lies; Enter keeps what was typed. */
export function BinField({ part, location, bin }: BinFieldProps) {
  const [typed, setTyped] = useState(bin ?? '')
  const set = useStockChange((to: string) => ask('stock-ledger.set-bin', { part, location, bin: to }))
  const isChanged = typed.trim() !== (bin ?? '')
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (isChanged && !set.isPending) set.mutate(typed)
  }
  return (
    <form className="bin-field" onSubmit={onSubmit}>
      <input
        className="text-field number bin-field__bin"
        aria-label={`Bin in ${location}`}
        maxLength={20}
        autoComplete="off"
        value={typed}
        onChange={event => setTyped(event.target.value)}
      />
      {isChanged && (
        <button type="submit" className="plain-button">
          Keep
        </button>
      )}
      {set.error !== null && (
        <p className="problem-note" role="alert">
          {set.error.message}
        </p>
      )}
    </form>
  )
}
