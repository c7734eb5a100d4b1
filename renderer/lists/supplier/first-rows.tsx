import type { FilePreview } from '../../../shared-schemas/supplier-layouts.ts'

/** The first rows of the file as they would be read. */
export function FirstRows({ preview: { headings, above, rows } }: { readonly preview: FilePreview }) {
  const shown = rows.slice(0, mostRows)
  return (
    <section
      className="wide-table"
      aria-label="First rows"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
      tabIndex={0}
    >
      <table className="counts first-rows">
        <thead>
          <tr>
            <th scope="col">Line</th>
            {headings.map((heading, at) => (
              <th key={at} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map(({ line, cells, fault }) => (
            <tr key={line}>
              <th scope="row">{line}</th>
              {fault === null ? (
                cells.map((cell, at) => (
                  <td key={at} className="number">
                    {cell}
                  </td>
                ))
              ) : (
                <td colSpan={headings.length}>{fault}</td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      {above.length > 0 && <p className="quiet">{above.length} above the headings, which are passed over.</p>}
      {shown.length === 0 && <p>No row stands under the headings.</p>}
    </section>
  )
}

const mostRows = 5
