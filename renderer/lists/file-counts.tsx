import type { LoadedFile } from '../../shared-schemas/catalogue.ts'
import { wordFigure, wordSize } from './word-figures.ts'

interface CountedFile extends LoadedFile {
  readonly sha256?: string
  readonly bytes?: number
}

/** What becomes of each file's rows. Of one that was loaded also its size and the beginning of its hash. */
export function FileCounts({
  files,
  caption,
}: {
  readonly files: readonly CountedFile[]
  readonly caption: string
}) {
  const isHashed = files.some(({ sha256 }) => sha256 !== undefined)
  return (
    <section
      className="wide-table"
      aria-label={caption}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
      tabIndex={0}
    >
      <table className="counts">
        <thead>
          <tr>
            <th scope="col">File</th>
            <th scope="col">Added</th>
            <th scope="col">Changed</th>
            <th scope="col">Unchanged</th>
            <th scope="col">Retired</th>
            <th scope="col">Rejected</th>
            {isHashed && (
              <>
                <th scope="col">Size</th>
                <th scope="col">SHA-256, first 8</th>
              </>
            )}
          </tr>
        </thead>
        <tbody>
          {files.map(({ file, added, changed, unchanged, retired, rejected, sha256, bytes }) => (
            <tr key={file}>
              <th scope="row">{file}</th>
              <Count value={added} />
              <Count value={changed} />
              <Count value={unchanged} />
              <Count value={retired} />
              <Count value={rejected} />
              {isHashed && (
                <>
                  <td>{bytes === undefined ? '' : wordSize(bytes)}</td>
                  <td className="number">{sha256?.slice(0, 8)}</td>
                </>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function Count({ value }: { readonly value: number }) {
  return <td className={value === 0 ? 'counts__none' : 'counts__some'}>{wordFigure(value)}</td>
}
