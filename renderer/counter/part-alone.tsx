import { useQuery } from '@tanstack/react-query'
import type { ListedModel } from '../../shared-schemas/model-list.ts'
import { AskProblem } from '../bridge/ask-problem.ts'
import { ask } from '../bridge/client.ts'
import { useSettled } from '../components/use-settled.ts'
import { wordCount } from '../components/word-models.ts'
import { ModelsView } from './models-view.tsx'

/** A part in the hand and no plate yet: which models it goes into, so that the customer's can be looked for among them. */
export function PartAlone({ part }: { readonly part: string }) {
  const typed = useSettled(part.trim(), pauseMilliseconds)
  const { data, error } = useQuery({
    queryKey: ['fit-check.list-fitted-models', typed, 'first of each brand'],
    queryFn: () => ask('fit-check.list-fitted-models', { part: typed, most: mostRead }),
    enabled: typed !== '',
  })
  if (typed !== part.trim()) return null
  if (error instanceof AskProblem) return <p className="part-alone">{error.message}</p>
  if (data === undefined) return null
  const byBrand = Map.groupBy(data.models, ({ brand }) => brand)
  return (
    <section className="part-alone" aria-labelledby="part-alone-title">
      <h2 id="part-alone-title" className="part-alone__title">
        <span className="number">{data.partNumber}</span> goes into {wordCount(data.count)}. Type the plate to
        judge it for one.
      </h2>
      <ModelsView part={data.partNumber} />
      <dl className="part-alone__brands">
        {data.brands.map(({ brand, models: count }) => (
          <BrandLine key={brand} brand={brand} count={count} models={byBrand.get(brand) ?? []} />
        ))}
      </dl>
    </section>
  )
}

interface BrandLineProps {
  readonly brand: string
  readonly count: number
  /** The first of them; none where other brands have so many that its own were not asked for. */
  readonly models: readonly ListedModel[]
}

function BrandLine({ brand, count, models }: BrandLineProps) {
  const named = models.slice(0, mostNamed)
  return (
    <div>
      <dt>
        {brand} <span className="quiet">{count.toLocaleString('en')}</span>
      </dt>
      <dd className="number">
        {named.map(({ modelNumber, conditions }) => (
          <span key={`${modelNumber} ${conditions.join()}`} className="part-alone__model">
            {modelNumber}
            {conditions.length > 0 && <span className="part-alone__condition"> {conditions.join(', ')}</span>}
          </span>
        ))}
        {named.length > 0 && count > named.length && (
          <span className="part-alone__condition">
            and {(count - named.length).toLocaleString('en')} more
          </span>
        )}
      </dd>
    </div>
  )
}

const pauseMilliseconds = 150
const mostNamed = 6
/** The sheet lists them all. */
const mostRead = 1000
