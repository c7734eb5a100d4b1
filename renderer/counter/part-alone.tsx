import { useQuery } from '@tanstack/react-query'
import { AskProblem } from '../bridge/ask-problem.ts'
import { ask } from '../bridge/client.ts'
import { useSettled } from '../components/use-settled.ts'

/** A part in the hand and no plate yet: which models it goes into, so that the customer's can be looked for among them. */
export function PartAlone({ part }: { readonly part: string }) {
  const typed = useSettled(part.trim(), pauseMilliseconds)
  const { data, error } = useQuery({
    queryKey: ['fit-check.list-fitted-models', typed],
    queryFn: () => ask('fit-check.list-fitted-models', { part: typed }),
    enabled: typed !== '',
  })
  if (typed !== part.trim()) return null
  if (error instanceof AskProblem) return <p className="part-alone">{error.message}</p>
  if (data === undefined) return null
  const byBrand = Map.groupBy(data.models, ({ brand }) => brand)
  return (
    <section className="part-alone" aria-labelledby="part-alone-title">
      <h2 id="part-alone-title" className="part-alone__title">
        <span className="number">{data.partNumber}</span> goes into {figure.format(data.count)}{' '}
        {data.count === 1 ? 'model' : 'models'}. Type the plate to judge it for one.
      </h2>
      <dl className="part-alone__brands">
        {[...byBrand].map(([brand, models]) => (
          <div key={brand}>
            <dt>
              {brand} <span className="quiet">{models.length}</span>
            </dt>
            <dd className="number">
              {models.slice(0, mostNamed).map(({ modelNumber, conditions }) => (
                <span key={`${modelNumber} ${conditions.join()}`} className="part-alone__model">
                  {modelNumber}
                  {conditions.length > 0 && (
                    <span className="part-alone__condition"> {conditions.join(', ')}</span>
                  )}
                </span>
              ))}
              {models.length > mostNamed && (
                <span className="part-alone__condition">and {models.length - mostNamed} more</span>
              )}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}

const pauseMilliseconds = 150
const mostNamed = 6
const figure = new Intl.NumberFormat('en')
