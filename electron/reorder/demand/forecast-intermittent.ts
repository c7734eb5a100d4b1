/** Smoothing constants, each above 0 and at most 1. */
export interface Smoothing {
  readonly alpha: number
  /** Of the probability that something is asked for; for the forecast that has one. */
  readonly beta?: number
}

/**
 * Croston's forecast of the demand in a period: smoothed size over smoothed interval, both renewed only when something is
 * asked for, and both begun with the first demand (Croston, Operational Research Quarterly 23, 1972). 0 without demand.
 */
export function forecastCroston(series: readonly number[], { alpha }: Smoothing): number {
  const state = smoothSizesAndIntervals(series, alpha)
  return state === undefined ? 0 : state.size / state.interval
}

/** Croston's forecast without its bias: times 1 - alpha / 2 (Syntetos and Boylan, International Journal of Forecasting 21, 2005). */
export function forecastSyntetosBoylan(series: readonly number[], { alpha }: Smoothing): number {
  return (1 - alpha / 2) * forecastCroston(series, { alpha })
}

/**
 * Smoothed size times smoothed probability, which falls in every period without demand, so that a dead part is seen to be
 * dead (Teunter, Syntetos and Babai, European Journal of Operational Research 214, 2011).
 */
export function forecastTeunterSyntetosBabai(
  series: readonly number[],
  { alpha, beta = alpha }: Smoothing,
): number {
  let size: number | undefined
  let probability: number | undefined
  for (const demand of series) {
    const was = demand > 0 ? 1 : 0
    if (demand > 0) size = size === undefined ? demand : size + alpha * (demand - size)
    probability = probability === undefined ? was : probability + beta * (was - probability)
  }
  return size === undefined || probability === undefined ? 0 : size * probability
}

function smoothSizesAndIntervals(series: readonly number[], alpha: number) {
  let state: { size: number; interval: number } | undefined
  let since = 1
  for (const demand of series) {
    if (demand > 0) {
      state =
        state === undefined
          ? { size: demand, interval: since }
          : {
              size: state.size + alpha * (demand - state.size),
              interval: state.interval + alpha * (since - state.interval),
            }
      since = 1
    } else since += 1
  }
  return state
}
