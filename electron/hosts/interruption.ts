/** Settles when the person or the system bids the program end. A second time ends it at once. */
export function untilInterrupted(): Promise<void> {
  return new Promise(resolve => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
      process.once(signal, () => {
        process.once(signal, () => process.exit(130))
        resolve()
      })
    }
  })
}
