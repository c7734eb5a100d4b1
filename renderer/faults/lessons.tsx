import { useQuery } from '@tanstack/react-query'
import type { Lesson } from '../../shared-schemas/fault-finding.ts'
import { ask } from '../bridge/client.ts'
import { ProblemNote } from '../components/problem-note.tsx'
import { ScrollRegion } from '../components/scroll-region.tsx'

/** What finished jobs taught: which symptoms lead to wrong orders, and how often the guide was right at first. */
export function Lessons() {
  const { data, error, refetch } = useQuery({
    queryKey: ['fault-guide.read-lessons'],
    queryFn: () => ask('fault-guide.read-lessons', {}),
    staleTime: 0,
  })
  if (error !== null)
    return <ProblemNote problem={error} kept="The jobs are kept." onRetry={() => void refetch()} />
  if (data === undefined) return null
  if (data.lessons.length === 0)
    return <p className="quiet">No finished job has taught anything about a symptom of the guide yet.</p>
  return (
    <div>
      <h2 className="stock-heading">What finished jobs taught</h2>
      <ScrollRegion label="What finished jobs taught" isTall>
        <table className="stock-table">
          <thead>
            <tr>
              <th scope="col">Symptom</th>
              <th scope="col">Jobs</th>
              <th scope="col">Wrong orders</th>
              <th scope="col">Second visits</th>
              <th scope="col">Guide right at first</th>
            </tr>
          </thead>
          <tbody>
            {data.lessons.map(lesson => (
              <LessonRow key={`${lesson.applianceType} ${lesson.symptom}`} lesson={lesson} />
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      <p className="quiet">
        A wrong order: a family was thought to be needed and did not go in, of the jobs of which it is known
        what did.{' '}
        {data.notInGuide > 0 && `${data.notInGuide} finished jobs have a symptom that the guide does not.`}
      </p>
    </div>
  )
}

function LessonRow({
  lesson: { applianceType, symptom, jobs, wrongOrders, told, secondVisits, proposals, firstRight },
}: {
  readonly lesson: Lesson
}) {
  return (
    <tr>
      <th scope="row">
        {symptom} <span className="quiet">{applianceType}</span>
      </th>
      <td>{jobs}</td>
      <td>{wordOf(wrongOrders, told)}</td>
      <td>{wordOf(secondVisits, jobs)}</td>
      <td>{wordOf(firstRight, proposals)}</td>
    </tr>
  )
}

function wordOf(some: number, all: number): string {
  return all === 0 ? 'not known' : `${some} of ${all}`
}
