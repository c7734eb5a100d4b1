import { useId } from 'react'
import type { PartExplained } from '../../shared-schemas/proposal.ts'
import { ScrollRegion } from '../components/scroll-region.tsx'
import { layOutChart, pathThrough } from './lay-out-chart.ts'
import { figure } from './line-words.ts'

/** What was asked for and where the stock will go, drawn; the same figures stand in a table below. */
export function StockChart({ explained }: { readonly explained: PartExplained }) {
  const id = useId()
  const chart = layOutChart(explained)
  const { bucket, reorderPoint, orderUpTo, meanPerBucket } = explained
  return (
    <figure className="stock-chart">
      <svg
        className="stock-chart__drawing"
        viewBox={`0 0 ${chart.width} ${chart.height}`}
        role="img"
        aria-labelledby={id}
      >
        <title>{`Asked for by the ${bucket}, and stock to come`}</title>
        {chart.bars.map(({ x, y, width, height }) => (
          <rect key={x} className="stock-chart__asked" x={x} y={y} width={width} height={height} />
        ))}
        {chart.unknown.map(({ x, y, width }) => (
          <line key={x} className="stock-chart__unknown" x1={x} x2={x + width} y1={y - 4} y2={y - 4} />
        ))}
        <line className="stock-chart__axis" x1={0} x2={chart.width} y1={chart.zero} y2={chart.zero} />
        <line className="stock-chart__today" x1={chart.today} x2={chart.today} y1={0} y2={chart.height} />
        <line
          className="stock-chart__forecast"
          x1={0}
          x2={chart.width}
          y1={chart.forecast}
          y2={chart.forecast}
        />
        {[chart.reorderPoint, chart.orderUpTo].map((y, at) => (
          <line
            key={at === 0 ? 'reorder point' : 'level'}
            className="stock-chart__level"
            x1={chart.today}
            x2={chart.width}
            y1={y}
            y2={y}
          />
        ))}
        <text className="stock-chart__word" x={chart.width - 4} y={chart.orderUpTo - 4} textAnchor="end">
          up to {orderUpTo}
        </text>
        <text className="stock-chart__word" x={chart.width - 4} y={chart.reorderPoint + 12} textAnchor="end">
          order at {reorderPoint}
        </text>
        <path className="stock-chart__without" d={pathThrough(chart.without)} />
        <path className="stock-chart__with" d={pathThrough(chart.with)} />
        <text className="stock-chart__word" x={chart.today - 6} y={10} textAnchor="end">
          asked for
        </text>
        <text className="stock-chart__word" x={chart.today + 6} y={10}>
          stock to come
        </text>
      </svg>
      <figcaption id={id}>
        Bars: pieces asked for in each {bucket}, the highest of the drawing being {figure(chart.most)}. Right
        of today: stock with this order (full line) and without (broken), between the reorder point{' '}
        {reorderPoint} and {orderUpTo}. Dotted: {figure(meanPerBucket)} a {bucket} expected.
      </figcaption>
      <details>
        <summary>The figures as a table</summary>
        <ChartTable explained={explained} />
      </details>
    </figure>
  )
}

function ChartTable({ explained: { bucket, history, projected } }: { readonly explained: PartExplained }) {
  return (
    <ScrollRegion label="History and stock to come" isTall>
      <table className="stock-table stock-table--narrow">
        <thead>
          <tr>
            <th scope="col">A {bucket}</th>
            <th scope="col" className="stock-figure">
              Asked for
            </th>
            <th scope="col" className="stock-figure">
              Stock with the order
            </th>
            <th scope="col" className="stock-figure">
              Without
            </th>
          </tr>
        </thead>
        <tbody>
          {history.map(({ from, pieces }) => (
            <tr key={from}>
              <th scope="row">from {from}</th>
              <td className="stock-figure">{pieces ?? 'out of stock'}</td>
              <td />
              <td />
            </tr>
          ))}
          {projected.map(({ to, with: bought, without }) => (
            <tr key={to}>
              <th scope="row">to {to}</th>
              <td />
              <td className="stock-figure">{figure(bought)}</td>
              <td className="stock-figure">{figure(without)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  )
}
