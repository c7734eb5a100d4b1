/** Takes what came back off the demand before it, the latest first; what came back of earlier times is left out. */
export function netReturns(series: Int32Array): void {
  let back = 0
  for (let at = series.length - 1; at >= 0; at--) {
    const pieces = series[at] ?? 0
    const left = pieces - back
    series[at] = Math.max(0, left)
    back = Math.max(0, -left)
  }
}
