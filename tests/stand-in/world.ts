/** What the stand-in's members share: the state that is inside Electron's own program. */
export const world = {
  isReady: false,
  isSandboxed: (): boolean => false,
  schemes: new Set<string>(),
  servers: new Map<string, (request: Request) => Promise<Response>>(),
  channels: new Map<string, (event: unknown, ...given: unknown[]) => unknown>(),
  onWindowCreated: (_contents: unknown): void => {},
  onAllWindowsClosed: (): void => {},
  closePages: async (): Promise<void> => {},
  report: { refusedNavigations: [] as string[], refusedWindows: [] as string[], timesFocused: 0 },
}

/** Chromium knows no custom scheme, so that it is shown one as a host of its own, which is a secure origin too. */
export function asChromiumAddress(address: string): string {
  return address.replace(/^tallyplate:\/\/([^/]+)/, 'http://$1.tallyplate.localhost')
}

export function asElectronAddress(address: string): string {
  return address.replace(/^http:\/\/([^/.]+)\.tallyplate\.localhost/, 'tallyplate://$1')
}
