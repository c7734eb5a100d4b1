import type { Page } from 'playwright-core'

/** From asking for a frame to after it, with nothing to draw: what the browser itself takes here. */
export function timeEmptyFrame(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const took: number[] = []
    for (let frame = 0; frame < 50; frame++) {
      const since = performance.now()
      await new Promise<void>(resolve =>
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel()
          port1.onmessage = () => resolve()
          port2.postMessage(0)
        }),
      )
      took.push(performance.now() - since)
    }
    return took.toSorted((one, other) => one - other)[25] ?? Number.NaN
  })
}
