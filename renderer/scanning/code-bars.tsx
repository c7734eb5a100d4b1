import { encodeCode128 } from '../../shared-schemas/code-128.ts'

/** The code in bars. A text that Code 128 cannot say is on the label as text alone. */
export function CodeBars({ code }: { readonly code: string }) {
  const widths = encodeCode128(code)
  if (widths === undefined) return <p>No code can be printed of {code}.</p>
  const modules = widths.reduce((sum, width) => sum + width, 0) + 2 * quietModules
  return (
    <svg
      className="label__bars"
      role="img"
      aria-label={`Code ${code}`}
      viewBox={`0 0 ${modules} 40`}
      width={`${(modules * moduleMillimetres).toFixed(2)}mm`}
      height="13mm"
      preserveAspectRatio="none"
      shapeRendering="crispEdges"
    >
      <path d={drawBars(widths)} />
    </svg>
  )
}

/** Clear space before and after the bars, and the width of the narrowest: what common scanners read (common practice). */
const quietModules = 10
const moduleMillimetres = 0.33

function drawBars(widths: readonly number[]): string {
  let at = quietModules
  return widths
    .map((width, index) => {
      const bar = index % 2 === 0 ? `M${at} 0h${width}v40h${-width}z` : ''
      at += width
      return bar
    })
    .join('')
}
