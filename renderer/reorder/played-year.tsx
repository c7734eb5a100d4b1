import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { PlayedSetting, PlayedYear } from '../../shared-schemas/reorder-back-test.ts'
import { ask } from '../bridge/client.ts'
import { ProblemNote } from '../components/problem-note.tsx'
import { ScrollRegion } from '../components/scroll-region.tsx'
import { useLasting } from '../components/use-lasting.ts'
import { wordMoney } from '../components/word-money.ts'
import { pathThrough } from './lay-out-chart.ts'
import { layOutExchange } from './lay-out-exchange.ts'
import { percent } from './line-words.ts'
import type { Reorder } from './use-reorder.ts'

/** What this setting and others would have done over the last year, from which the buyer picks one. */
export function PlayedYearPanel({ reorder }: { readonly reorder: Reorder }) {
  const [isOpen, setOpen] = useState(false)
  const { aim, setFillRate } = reorder
  const played = useQuery({
    queryKey: ['reorder.play-last-year', aim],
    queryFn: () => ask('reorder.play-last-year', aim),
    enabled: isOpen,
    staleTime: Number.POSITIVE_INFINITY,
    placeholderData: before => before,
  })
  const isWaiting = useLasting(played.isFetching)
  return (
    <details className="reorder-left-out" onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>What this setting would have done over the last year</summary>
      {isWaiting && <p role="status">Playing the year through…</p>}
      {played.error !== null && (
        <ProblemNote
          problem={played.error}
          kept="Nothing was changed."
          onRetry={() => void played.refetch()}
        />
      )}
      {played.data !== undefined && (
        <PlayedYearAnswer played={played.data} onPick={share => setFillRate(String(100 * share))} />
      )}
    </details>
  )
}

interface PlayedYearAnswerProps {
  readonly played: PlayedYear
  readonly onPick: (fillRate: number) => void
}

function PlayedYearAnswer({ played, onPick }: PlayedYearAnswerProps) {
  const { buckets, bucket, parts, ofParts, setting, curve, present, currency } = played
  if (buckets === 0) return <p>There is too little history to play any of it through.</p>
  return (
    <>
      <p>
        Played: {buckets} {bucket}s, {parts} of {ofParts} parts that were asked for, each {bucket} with what
        was known then. {setting !== null && wordPlayed('This setting', setting, currency)}
      </p>
      {present !== null && (
        <p>
          On the {present.parts} parts with a minimum and maximum of today:{' '}
          {wordPlayed('those', present.theirs, currency)} {wordPlayed('This setting', present.ours, currency)}
        </p>
      )}
      {curve.length > 1 && <ExchangeDrawing curve={curve} />}
      <ScrollRegion label="What other settings would have done">
        <table className="stock-table stock-table--narrow">
          <thead>
            <tr>
              <th scope="col" className="stock-figure">
                Aim
              </th>
              <th scope="col" className="stock-figure">
                There at once
              </th>
              <th scope="col" className="stock-figure">
                Stock, value
              </th>
              <th scope="col" className="stock-figure">
                Stock, pieces
              </th>
              <th scope="col" className="stock-figure">
                Orders
              </th>
              <th scope="col">
                <span className="unseen">Choose</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {curve.map(point => (
              <tr key={point.targetFillRate}>
                <th scope="row" className="stock-figure">
                  {point.targetFillRate === null ? '' : percent(point.targetFillRate)}
                </th>
                <td className="stock-figure">{percent(point.fillRate)}</td>
                <td className="stock-figure">{wordValue(point, currency)}</td>
                <td className="stock-figure">{point.stockPieces.toFixed(0)}</td>
                <td className="stock-figure">{point.orders}</td>
                <td>
                  {point.targetFillRate !== null && (
                    <button
                      type="button"
                      className="plain-button"
                      onClick={() => onPick(point.targetFillRate ?? 0)}
                    >
                      Take {percent(point.targetFillRate)}
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </>
  )
}

function ExchangeDrawing({ curve }: { readonly curve: readonly PlayedSetting[] }) {
  const { width, height, points, labels } = layOutExchange(curve)
  return (
    <figure className="stock-chart">
      <svg className="stock-chart__drawing" viewBox={`0 0 ${width} ${height}`} role="img">
        <title>The more stock, the more is there at once; the figures stand in the table below</title>
        <path className="stock-chart__with" d={pathThrough(points)} />
        {labels.map(({ x, y, text }) => (
          <text key={text} className="stock-chart__word" x={x} y={y} textAnchor="middle">
            {text}
          </text>
        ))}
      </svg>
      <figcaption>
        Across: stock on average. Up: share of the pieces asked for that were there at once.
      </figcaption>
    </figure>
  )
}

function wordPlayed(
  what: string,
  { fillRate, orders, ...played }: PlayedSetting,
  currency: string | null,
): string {
  return `${what}: ${percent(fillRate)} of the pieces there at once, ${wordValue(played, currency)} of stock, ${orders} orders.`
}

function wordValue({ stockValue }: Pick<PlayedSetting, 'stockValue'>, currency: string | null): string {
  return currency === null ? stockValue : wordMoney({ price: stockValue, currency })
}
