/** What decides where the Counter is shown, all of it found out before. */
export interface Circumstances {
  readonly wantsBrowser: boolean
  readonly wantsFetch: boolean
  /** Electron's program, where it is installed. */
  readonly electron: string | undefined
  /** Why an earlier try to fetch Electron for this installation failed. */
  readonly earlierFailure: string | undefined
  /** A test or a build server: nothing may be fetched. */
  readonly isUnattended: boolean
  readonly hasDisplay: boolean
  /** Electron's sandbox does not run for root on Linux, and without its sandbox it is not started. */
  readonly isLinuxRoot: boolean
}

export type Choice =
  | { readonly kind: 'window'; readonly electron: string }
  | { readonly kind: 'fetch' }
  /** `because` completes the sentence “shown in a browser, because …”. */
  | { readonly kind: 'browser'; readonly because: string }

/** Electron's window where it is there and can be shown; else a fetch where one may help; else the browser, and why. */
export function chooseWindow(found: Circumstances): Choice {
  if (found.wantsBrowser) return { kind: 'browser', because: '--browser was given' }
  const hindrance = findHindrance(found)
  if (hindrance !== undefined && !found.wantsFetch) return { kind: 'browser', because: hindrance }
  if (found.electron !== undefined)
    return hindrance === undefined
      ? { kind: 'window', electron: found.electron }
      : { kind: 'browser', because: hindrance }
  if (found.isUnattended)
    return { kind: 'browser', because: 'Electron is not installed and nothing is fetched in tests or CI' }
  if (found.earlierFailure !== undefined && !found.wantsFetch)
    return {
      kind: 'browser',
      because: `Electron is not installed and could not be fetched earlier (${found.earlierFailure}); npm start -- --fetch-electron tries again`,
    }
  return { kind: 'fetch' }
}

function findHindrance({ hasDisplay, isLinuxRoot }: Circumstances): string | undefined {
  if (!hasDisplay) return 'this session has no display'
  return isLinuxRoot ? "Electron's sandbox does not run for root" : undefined
}
