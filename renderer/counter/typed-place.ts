/** Which typed character a cell on the screen stands for; past the last where it stands for none. */
export function typedPlaceOf(target: EventTarget | null, past: number): number {
  const cell = target instanceof Element ? target.closest('[data-typed-at]') : null
  return Number(cell?.getAttribute('data-typed-at') ?? past)
}
