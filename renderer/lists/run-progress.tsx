import { useMutation } from '@tanstack/react-query'
import { ask } from '../bridge/client.ts'
import { useLasting } from '../components/use-lasting.ts'
import { type Pace, useLoading } from './use-loading.ts'
import { wordFigure, wordSeconds } from './word-figures.ts'

/** How far the work is, how fast, how long it still takes, and the way to stop it. */
export function RunProgress({ isRunning, what }: { readonly isRunning: boolean; readonly what: string }) {
  const pace = useLoading(isRunning)
  const isLasting = useLasting(isRunning)
  const stop = useMutation({
    mutationFn: () => ask('catalogue.stop-loading', {}),
    networkMode: 'always',
  })
  if (!isLasting) return null
  const isStopping = pace?.isStopping === true || stop.isPending
  const rowsExpected = Math.max(pace?.rowsExpected ?? 0, 1)
  return (
    <div className="run-progress">
      <p className="run-progress__what" role="status">
        {isStopping ? 'Stopping. Nothing of it will stay.' : `${what}…`}
      </p>
      <progress
        className="run-progress__bar"
        aria-label="Rows of this file"
        max={rowsExpected}
        value={Math.min(pace?.rowsDone ?? 0, rowsExpected)}
      />
      <p className="run-progress__pace">{pace === null ? 'Counting rows' : wordPace(pace)}</p>
      <button type="button" className="order-button" disabled={isStopping} onClick={() => stop.mutate()}>
        Stop
      </button>
    </div>
  )
}

function wordPace({ file, rowsDone, rowsExpected, rowsPerSecond }: Pace): string {
  if (file === '') return 'Counting rows'
  const done = `${file}: ${wordFigure(rowsDone)} of about ${wordFigure(rowsExpected)} rows`
  if (rowsPerSecond === null || rowsPerSecond < 1) return done
  const left = (rowsExpected - rowsDone) / rowsPerSecond
  const rate = `${wordFigure(Math.round(rowsPerSecond))} a second`
  return left < 1 ? `${done}, ${rate}` : `${done}, ${rate}, ${wordSeconds(left)} left in this file`
}
