import type { ReactNode } from 'react'

interface ScrollRegionProps {
  readonly label: string
  readonly isTall?: boolean
  readonly children: ReactNode
}

/** What may be wider or longer than the screen; it takes the focus, so that it is scrolled by keyboard too. */
export function ScrollRegion({ label, isTall = false, children }: ScrollRegionProps) {
  return (
    <section
      className={isTall ? 'stock-scroll stock-scroll--tall' : 'stock-scroll'}
      aria-label={label}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: only what has the focus is scrolled by keyboard
      tabIndex={0}
    >
      {children}
    </section>
  )
}
