import { KeyHint } from './key-hint.tsx'
import { TallyMark } from './tally-mark.tsx'

/** A screen as the top line names it, with the key that shows it from anywhere. */
export interface NamedScreen {
  readonly name: string
  readonly shortcut: string
  readonly isShowing: boolean
  readonly onShow: () => void
}

interface TopLineProps {
  /** The screens, in the order of the day; the one that shows is named. */
  readonly screens: readonly NamedScreen[]
  readonly shop: string
}

/** The one line above everything: the program, its screens in words, and whose shop it is. */
export function TopLine({ screens, shop }: TopLineProps) {
  return (
    <header className="top-line">
      <p className="top-line__program">
        <TallyMark /> Tallyplate
      </p>
      <nav aria-label="Screens">
        <ul className="top-line__screens">
          {screens.map(({ name, shortcut, isShowing, onShow }) => (
            <li key={name}>
              <button
                type="button"
                className="top-line__screen"
                aria-current={isShowing ? 'page' : undefined}
                aria-keyshortcuts={shortcut}
                onClick={onShow}
              >
                <NameWithKey name={name} shortcut={shortcut} />
              </button>
              {!shortcut.startsWith(alt) && (
                <>
                  {' '}
                  <KeyHint>{shortcut}</KeyHint>
                </>
              )}
            </li>
          ))}
          <li aria-hidden="true">
            <KeyHint>Alt + letter</KeyHint>
          </li>
        </ul>
      </nav>
      <p className="top-line__shop">{shop}</p>
    </header>
  )
}

const alt = 'Alt+'

/** Ten keys spelled out would be longer than the names: a letter with Alt is underlined in the name instead. */
function NameWithKey({ name, shortcut }: Pick<NamedScreen, 'name' | 'shortcut'>) {
  if (!shortcut.startsWith(alt)) return name
  const at = name.toUpperCase().indexOf(shortcut.slice(alt.length))
  if (at < 0)
    throw new Error(`the key of a screen is a letter of its name, but ${shortcut} is not in ${name}`)
  return (
    <>
      {name.slice(0, at)}
      <span className="top-line__letter">{name.charAt(at)}</span>
      {name.slice(at + 1)}
    </>
  )
}
