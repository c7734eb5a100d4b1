import type { Caution } from '../../shared-schemas/fit-check.ts'

/** Cautions, set apart, the imperative first. They cannot be dismissed. */
export function CautionList({ cautions }: { readonly cautions: readonly Caution[] }) {
  if (cautions.length === 0) return null
  return (
    <section className="cautions" aria-label="Cautions">
      <ul className="cautions__list">
        {cautions.map(({ code, text }) => {
          const { order, rest } = firstSentence(text)
          return (
            <li key={`${code} ${text}`}>
              <strong>{order}</strong>
              {rest}
            </li>
          )
        })}
      </ul>
    </section>
  )
}

/** What to do stands in the first sentence, up to its stop, colon or semicolon. */
function firstSentence(text: string) {
  const end = text.search(/[.:;](\s|$)/)
  return end < 0 ? { order: text, rest: '' } : { order: text.slice(0, end + 1), rest: text.slice(end + 1) }
}
