import type { StartUp } from '../../shared-schemas/application.ts'
import { wordProblem } from '../../shared-schemas/problem-wording.ts'
import { TallyMark } from '../components/tally-mark.tsx'
import { useLasting } from '../components/use-lasting.ts'

type NotReady = Exclude<StartUp, { state: 'ready' }>

/** What the person sees before the shop is open: nothing for a blink, then how far it is, or why it will not open. */
export function StartUpScreen({ startUp }: { readonly startUp: NotReady }) {
  const isLasting = useLasting(startUp.state !== 'failed')
  return (
    <main className="start-up">
      <div className="start-up__plate">
        <h1 className="start-up__name">
          <TallyMark />
          Tallyplate
        </h1>
        {startUp.state === 'failed' ? (
          <div role="alert">
            <p className="start-up__sentence">The shop could not be opened.</p>
            <p>{wordProblem(startUp.problem)}</p>
          </div>
        ) : (
          <div role="status">{isLasting && <Progress startUp={startUp} />}</div>
        )}
      </div>
    </main>
  )
}

function Progress({ startUp }: { readonly startUp: Exclude<NotReady, { state: 'failed' }> }) {
  if (startUp.state === 'opening') return <p className="start-up__sentence">Opening the shop…</p>
  const { file, rowsDone, rowsExpected } = startUp
  return (
    <>
      <p className="start-up__sentence">Loading the sample shop. This happens once.</p>
      <progress
        className="start-up__progress"
        aria-label="Rows loaded"
        max={Math.max(rowsExpected, 1)}
        value={Math.min(rowsDone, Math.max(rowsExpected, 1))}
      />
      <p className="start-up__count">
        {rowsExpected > 0
          ? `${figure.format(rowsDone)} of about ${figure.format(rowsExpected)} rows`
          : 'Counting rows'}
        {file !== '' && `, now ${file}`}
      </p>
    </>
  )
}

const figure = new Intl.NumberFormat('en')
