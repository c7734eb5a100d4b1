import { useQuery } from '@tanstack/react-query'
import { type FormEvent, useId, useState } from 'react'
import type { FitAnswer } from '../../shared-schemas/fit-check.ts'
import type { VerdictEvent } from '../../shared-schemas/fit-records.ts'
import type { Output } from '../../shared-schemas/index.ts'
import type { PlateReadings } from '../../shared-schemas/plate-reading.ts'
import { ask } from '../bridge/client.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { ProblemNote } from '../components/problem-note.tsx'
import { VerdictWord } from '../components/verdict-word.tsx'
import { readPastDay } from './read-past-day.ts'
import { Sheet } from './sheet.tsx'
import { useSheet } from './use-sheet.ts'

interface HistoryViewProps {
  readonly answer: FitAnswer
  /** The other readings of the plate, which a verdict of a day is held against as well. */
  readonly readings: PlateReadings
}

/** F6: what was said and recorded of this part in this model, and the verdict of any day; beside the plate, to be printed. */
export function HistoryView({ answer: { model, part }, readings }: HistoryViewProps) {
  if (model === null || part.partNumber === null) return null
  const { modelNumber, brand } = model
  return <HistoryOf about={{ ...readings, model: modelNumber, brand, part: part.partNumber }} />
}

type About = PlateReadings & { readonly model: string; readonly brand: string; readonly part: string }

function HistoryOf({ about }: { readonly about: About }) {
  const sheet = useSheet('F6')
  const [isOpen, setOpen] = useState(false)
  return (
    <>
      <button
        type="button"
        className="plain-button"
        aria-keyshortcuts="F6"
        aria-haspopup="dialog"
        onClick={() => sheet.current?.showModal()}
      >
        History <KeyHint>F6</KeyHint>
      </button>
      <Sheet
        sheet={sheet}
        title={
          <>
            History of <span className="number">{about.part}</span> in {about.brand}{' '}
            <span className="number">{about.model}</span>
          </>
        }
        onToggle={setOpen}
      >
        {isOpen && <HistoryPage about={about} />}
      </Sheet>
    </>
  )
}

function HistoryPage({ about }: { readonly about: About }) {
  const [day, setDay] = useState<string>()
  const { data, error, refetch } = useQuery({
    queryKey: ['fit-check.read-history', about, day],
    queryFn: () => ask('fit-check.read-history', { ...about, ...(day === undefined ? {} : { asOf: day }) }),
    placeholderData: before => before,
    // Somebody else may have recorded something since it was last opened.
    staleTime: 0,
  })
  return (
    <>
      {error !== null && (
        <ProblemNote problem={error} kept="Nothing was changed by looking." onRetry={() => void refetch()} />
      )}
      {data !== undefined && <EventTable events={data.events} />}
      <DayForm onDay={setDay} />
      {data?.asOf != null && data.asOf.date === day && <VerdictOfDay asOf={data.asOf} />}
    </>
  )
}

function EventTable({ events }: { readonly events: readonly VerdictEvent[] }) {
  if (events.length === 0) return <p>Nothing was ever said or recorded of it.</p>
  return (
    <table className="history">
      <thead>
        <tr>
          <th scope="col">Day</th>
          <th scope="col">What was said or recorded</th>
          <th scope="col">By</th>
        </tr>
      </thead>
      <tbody>
        {events.map(({ at, kind, text, source }) => (
          <tr key={`${at} ${kind} ${text} ${source}`}>
            <td className="history__day">{at?.slice(0, 10) ?? 'before'}</td>
            <td>{text}</td>
            <td>{source}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function DayForm({ onDay }: { readonly onDay: (day: string | undefined) => void }) {
  const id = useId()
  const [typed, setTyped] = useState('')
  const [problem, setProblem] = useState<string>()
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    const read = readPastDay(typed, new Date())
    setProblem(read.ok ? undefined : read.problem)
    onDay(read.ok ? read.day : undefined)
  }
  return (
    <form className="history__form" onSubmit={onSubmit}>
      <label htmlFor={id}>Verdict of the day (2026-11-23)</label>{' '}
      <input
        id={id}
        className="text-field history__typed"
        // biome-ignore lint/a11y/noAutofocus: the sheet was opened this moment, and this is its one field
        autoFocus
        maxLength={20}
        value={typed}
        aria-invalid={problem !== undefined}
        aria-describedby={problem === undefined ? undefined : `${id}-problem`}
        onChange={event => setTyped(event.target.value)}
      />{' '}
      <button type="submit" className="plain-button">
        Show <KeyHint>Enter</KeyHint>
      </button>
      {problem !== undefined && (
        <p id={`${id}-problem`} className="problem-note" role="alert">
          {problem}
        </p>
      )}
    </form>
  )
}

type AsOf = NonNullable<Output<'fit-check.read-history'>['asOf']>

function VerdictOfDay({ asOf: { date, verdict, reasons } }: { readonly asOf: AsOf }) {
  return (
    <section className="history__verdict" aria-label={`Verdict of ${date}`} role="status">
      <p>
        At the end of <strong>{date}</strong>: <VerdictWord verdict={verdict} />
      </p>
      <ul>
        {reasons.map(({ text, source }) => (
          <li key={`${text} ${source}`}>{source === null ? text : `${text} (${source})`}</li>
        ))}
      </ul>
      <p>By what was said that day; attributes and replacements are those of today.</p>
    </section>
  )
}
