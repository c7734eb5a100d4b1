import { useVirtualizer } from '@tanstack/react-virtual'
import { type KeyboardEvent, type ReactNode, useEffect, useRef } from 'react'

interface LongListProps {
  readonly label: string
  readonly count: number
  /** About how high most rows are. */
  readonly rowPixels?: number
  readonly row: (at: number) => ReactNode
  /** Told which rows are drawn, first and last, so that only those are asked for. */
  readonly onSight?: (first: number, last: number) => void
}

/** Any number of rows of any height, of which only those in sight are drawn. The arrow keys move it. */
export function LongList({ label, count, rowPixels = 52, row, onSight }: LongListProps) {
  const scroller = useRef<HTMLElement>(null)
  const rows = useVirtualizer({
    count,
    getScrollElement: () => scroller.current,
    estimateSize: () => rowPixels,
    overscan: 8,
  })
  const drawn = rows.getVirtualItems()
  const [first, last] = [drawn[0]?.index ?? 0, drawn.at(-1)?.index ?? 0]
  useEffect(() => onSight?.(first, last), [onSight, first, last])
  // The browser would go where the end is guessed to be, before the rows there were ever drawn.
  const goToEnd = (event: KeyboardEvent) => {
    if (event.key !== 'Home' && event.key !== 'End') return
    event.preventDefault()
    rows.scrollToIndex(event.key === 'Home' ? 0 : count - 1)
  }
  return (
    <section
      ref={scroller}
      onKeyDown={goToEnd}
      className="long-list"
      aria-label={label}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
      tabIndex={0}
    >
      <ul className="long-list__rows" style={{ height: rows.getTotalSize() }}>
        {drawn.map(({ key, index, start }) => (
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
