import { type FormEvent, useState } from 'react'
import { decimal } from '../../shared-schemas/quantities.ts'
import { KeyHint } from '../components/key-hint.tsx'
import type { Reorder } from './use-reorder.ts'

/** What the proposal goes by: how often a piece should be there, the budget, and whether pattern stock is used up first. */
export function ProposalSettings({ reorder }: { readonly reorder: Reorder }) {
  const { fillRate, setFillRate, keepFillRate, isShareReadable, settings, change, proposal, makeAnew } =
    reorder
  const [budget, setBudget] = useState<string>()
  const shown = budget ?? settings.data?.budget ?? ''
  const isBudgetReadable = shown.trim() === '' || decimal.safeParse(shown.trim()).success
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!isBudgetReadable || !isShareReadable) return
    if (fillRate.trim() !== '') keepFillRate()
    if (budget !== undefined) change.mutate({ budget: shown.trim() === '' ? null : shown.trim() })
    else if (fillRate.trim() === '') void makeAnew()
    setBudget(undefined)
  }
  return (
    <form className="stock-form" aria-label="What the proposal goes by" onSubmit={onSubmit}>
      <p className="stock-form__field stock-form__field--short">
        <label htmlFor="reorder-fill-rate">Fill rate, %</label>
        <input
          id="reorder-fill-rate"
          className="text-field"
          data-first-field=""
          inputMode="decimal"
          maxLength={6}
          autoComplete="off"
          placeholder={proposal.data === undefined ? '' : String(100 * proposal.data.targetFillRate)}
          aria-invalid={!isShareReadable || undefined}
          value={fillRate}
          onChange={event => setFillRate(event.target.value)}
        />
      </p>
      <p className="stock-form__field stock-form__field--short">
        <label htmlFor="reorder-budget">Budget</label>
        <input
          id="reorder-budget"
          className="text-field"
          inputMode="decimal"
          maxLength={12}
          autoComplete="off"
          placeholder="none"
          aria-invalid={!isBudgetReadable || undefined}
          value={shown}
          onChange={event => setBudget(event.target.value)}
        />
      </p>
      <p className="reorder-check">
        <input
          id="reorder-pattern"
          type="checkbox"
          checked={settings.data?.usesPatternStock ?? false}
          onChange={event => change.mutate({ usesPatternStock: event.target.checked })}
        />{' '}
        <label htmlFor="reorder-pattern">Use up pattern parts before buying genuine ones for stock</label>
      </p>
      {fillRate.trim() !== '' || budget !== undefined ? (
        <button type="submit" className="order-button">
          Keep for every week <KeyHint>Enter</KeyHint>
        </button>
      ) : (
        <button type="submit" className="order-button" aria-keyshortcuts="F9">
          Propose anew <KeyHint>F9</KeyHint>
        </button>
      )}
      {(!isShareReadable || !isBudgetReadable || change.error !== null) && (
        <p className="problem-note" role="alert">
          {!isShareReadable
            ? 'Write a percentage from 50 to 99.9.'
            : !isBudgetReadable
              ? 'Write the budget as 1500 or 1500.00, or leave it empty for none.'
              : change.error?.message}
        </p>
      )}
    </form>
  )
}
