/** Four strokes and one across: five counted. */
export function TallyMark() {
  return (
    <svg className="tally-mark" viewBox="0 0 26 20" aria-hidden="true" focusable="false">
      <path className="tally-mark__strokes" d="M5 3v14M10 3v14M15 3v14M20 3v14" />
      <path className="tally-mark__across" d="M1 15 25 5" />
    </svg>
  )
}
