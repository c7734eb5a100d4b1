import { TallyMark } from './tally-mark.tsx'

interface TopLineProps {
  /** The screens, in the order of the day; the one that shows is named. */
  readonly screens: readonly { readonly name: string; readonly isShowing: boolean }[]
  readonly shop: string
}

/** The one line above everything: the program, its screens in words, and whose shop it is. */
export function TopLine({ screens, shop }: TopLineProps) {
  return (
    <header className="top-line">
      <p className="top-line__program">
        <TallyMark /> Tallyplate
      </p>
      <ul className="top-line__screens">
        {screens.map(({ name, isShowing }) => (
          <li key={name} aria-current={isShowing ? 'page' : undefined}>
            {name}
          </li>
        ))}
      </ul>
      <p className="top-line__shop">{shop}</p>
    </header>
  )
}
