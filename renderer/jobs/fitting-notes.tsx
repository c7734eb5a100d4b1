/** What is minded when parts of these families go in, and tested afterwards, as room to write until a guide says it. */
export function FittingNotes({ families }: { readonly families: readonly string[] }) {
  if (families.length === 0) return null
  return (
    <>
      <h3>Putting together again, and testing</h3>
      <ul>
        {families.map(family => (
          <li key={family}>{family}: ______________________________</li>
        ))}
      </ul>
    </>
  )
}
