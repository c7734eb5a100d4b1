import { useMutation, useQuery } from '@tanstack/react-query'
import type { Output } from '../../shared-schemas/index.ts'
import { ask } from '../bridge/client.ts'
import { wordShare } from './count-words.ts'
import { OtherMachines } from './other-machines.tsx'
import { PastCounts } from './past-counts.tsx'
import type { Count } from './use-count.ts'

type Location = Output<'catalogue.read-summary'>['locations'][number]
type PastCount = Output<'van-counts.list-counts'>['counts'][number]

interface ChoosePlaceProps {
  readonly count: Count
  readonly locations: readonly Location[]
  readonly onTopUp: (van: string) => void
}

/** Which van or shelf is counted, vans first, each with its last count; below them what was counted before. */
export function ChoosePlace({ count, locations, onTopUp }: ChoosePlaceProps) {
  const past = useQuery({
    queryKey: ['counts'],
    queryFn: () => ask('van-counts.list-counts', {}),
    staleTime: 0,
  })
  const begin = useMutation({ mutationFn: count.begin, networkMode: 'always' })
  const counts = past.data?.counts ?? []
  const vansFirst = locations.toSorted(
    (one, other) => Number(other.kind === 'van') - Number(one.kind === 'van'),
  )
  return (
    <>
      <section aria-labelledby="choose-place">
        <h2 id="choose-place" className="stock-sentence">
          Which van or shelf is counted? Choose it here, or scan its label.
        </h2>
        <p className="stock-initials">
          <label htmlFor="count-initials">Your initials</label>{' '}
          <input
            id="count-initials"
            className="text-field stock-short"
            maxLength={6}
            autoComplete="off"
            value={count.initials}
            onChange={event => count.setInitials(event.target.value)}
          />
        </p>
        <ul className="place-list">
          {vansFirst.map(({ location, name, kind }, at) => (
            <li key={location} className="place-list__line">
              <button
                type="button"
                className="place-list__place"
                data-first-field={at === 0 || undefined}
                onClick={() => begin.mutate(location)}
              >
                <span className="place-list__name">{name}</span> <span className="number">{location}</span>{' '}
                <span className="quiet">
                  {wordLast(counts.find(counted => counted.location === location))}
                </span>
              </button>
              {kind === 'van' && (
                <button type="button" className="order-button" onClick={() => onTopUp(location)}>
                  Top up<span className="unseen"> {name}</span>
                </button>
              )}
            </li>
          ))}
        </ul>
        {begin.error !== null && (
          <p className="problem-note" role="alert">
            {begin.error.message}
          </p>
        )}
      </section>
      <OtherMachines />
      <PastCounts counts={counts} onOpen={countId => count.open(countId, 'compare')} />
    </>
  )
}

function wordLast(last: PastCount | undefined): string {
  if (last === undefined) return 'never counted'
  if (last.postedAt === null)
    return `going on since ${last.begunAt.slice(0, 10)}: ${last.lines} ${last.lines === 1 ? 'line' : 'lines'} counted`
  return `counted ${last.postedAt.slice(0, 10)}${last.recordAccuracy === null ? '' : `, ${wordShare(last.recordAccuracy)} right`}`
}
