import { useVirtualizer } from '@tanstack/react-virtual'
import { type ReactNode, useRef } from 'react'

interface LongListProps {
  readonly label: string
  readonly count: number
  readonly row: (at: number) => ReactNode
}

/** Any number of rows of any height, of which only those in sight are drawn. The arrow keys move it. */
export function LongList({ label, count, row }: LongListProps) {
  const scroller = useRef<HTMLElement>(null)
  const rows = useVirtualizer({
    count,
    getScrollElement: () => scroller.current,
    estimateSize: () => estimatedPixels,
    overscan: 8,
  })
  return (
    <section
      ref={scroller}
      className="long-list"
      aria-label={label}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
      tabIndex={0}
    >
      <ul className="long-list__rows" style={{ height: rows.getTotalSize() }}>
        {rows.getVirtualItems().map(({ key, index, start }) => (
          <li
            key={key}
            ref={rows.measureElement}
            className="long-list__row"
            data-index={index}
            aria-setsize={count}
            aria-posinset={index + 1}
            style={{ transform: `translateY(${start}px)` }}
          >
            {row(index)}
          </li>
        ))}
      </ul>
    </section>
  )
}

const estimatedPixels = 52
