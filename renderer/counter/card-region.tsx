import { type RefObject, useCallback, useMemo, useState } from 'react'
import { ProblemNote } from '../components/problem-note.tsx'
import { useLasting } from '../components/use-lasting.ts'
import { questionOf, readingsOf } from './counter-enquiry.ts'
import { filterFamilies } from './filter-families.ts'
import { FitCard } from './fit-card.tsx'
import { wordFamilies } from './outcome-words.ts'
import { PartCheck } from './part-check.tsx'
import { RowWhy } from './row-why.tsx'
import type { Counter } from './use-counter.ts'
import { mostListedTogether } from './use-counter-answers.ts'

interface CardRegionProps {
  readonly counter: Counter
  readonly filterField: RefObject<HTMLInputElement | null>
}

/** What is answered: the part in the hand first, then every family that fits. */
export function CardRegion({ counter, filterField }: CardRegionProps) {
  const { answers, enquiry, list, part, step } = counter
  const shown = useMemo(
    () => filterFamilies(list?.families ?? [], enquiry.filter),
    [list?.families, enquiry.filter],
  )
  const locations = answers.summary.data?.locations
  const shops = useMemo(
    () => new Set((locations ?? []).filter(({ kind }) => kind === 'shop').map(({ location }) => location)),
    [locations],
  )
  const openFamily = useCallback((family: string | null) => step({ do: 'open-family', family }), [step])
  const [whyPart, setWhyPart] = useState<string>()
  const isWaiting = useLasting(answers.fitting.isFetching || answers.judged.isFetching)
  const problem = answers.judged.error ?? answers.fitting.error
  return (
    <section className="card" aria-label="What fits">
      {problem !== null && (
        <ProblemNote
          problem={problem}
          kept="What you typed is kept."
          onRetry={() => {
            void answers.fitting.refetch()
            if (enquiry.part.trim() !== '') void answers.judged.refetch()
          }}
        />
      )}
      {isWaiting && <p className="card__waiting">Working it out…</p>}
      {part !== undefined && (
        <PartCheck
          answer={part}
          readings={readingsOf(enquiry)}
          onTry={number => step({ do: 'type-part', part: number })}
        />
      )}
      {answers.isTooWide && (
        <p className="card__sentence">
          Type more of the number, or choose the maker: what fits is listed once {mostListedTogether} models
          or fewer are open. A part in the hand is judged over all of them now.
        </p>
      )}
      {list !== undefined && (
        <>
          <h2 className="card__sentence">
            {enquiry.filter.trim() === ''
              ? wordFamilies(list.families, list.models)
              : `${shown.length} of ${list.families.length} part families match “${enquiry.filter.trim()}”.`}
          </h2>
          <FitCard
            families={shown}
            shops={shops}
            openFamily={enquiry.openFamily}
            isStale={answers.isListStale}
            filterField={filterField}
            onOpen={openFamily}
            onWhy={setWhyPart}
          />
          {whyPart !== undefined && (
            <RowWhy part={whyPart} question={questionOf(enquiry)} onClose={() => setWhyPart(undefined)} />
          )}
        </>
      )}
    </section>
  )
}
