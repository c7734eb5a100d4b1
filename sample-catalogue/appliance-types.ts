export const applianceTypes = [
  'dishwasher',
  'washer',
  'dryer',
  'oven',
  'hob',
  'fridge',
  'microwave',
  'vacuum',
] as const
export type ApplianceType = (typeof applianceTypes)[number]

/** How many basic numbers a brand has of each type, the platforms they are built on, and the watts on the plate. */
export const typeProfiles: Readonly<
  Record<ApplianceType, { lines: number; platforms: number; watts: readonly number[] }>
> = {
  dishwasher: { lines: 13, platforms: 6, watts: [1800, 1900, 2000, 2150, 2200, 2400] },
  washer: { lines: 10, platforms: 5, watts: [1850, 2000, 2050, 2200, 2300] },
  dryer: { lines: 6, platforms: 4, watts: [800, 1100, 2250, 2500, 2700, 2800] },
  oven: { lines: 6, platforms: 4, watts: [2300, 2800, 2950, 3300, 3500, 5200] },
  hob: { lines: 5, platforms: 4, watts: [6000, 6400, 6800, 7200, 7400] },
  fridge: { lines: 6, platforms: 4, watts: [90, 110, 120, 140, 160, 200] },
  microwave: { lines: 5, platforms: 3, watts: [1200, 1270, 1350, 1450, 1550] },
  vacuum: { lines: 6, platforms: 4, watts: [600, 700, 850, 1200, 1400, 1600, 2000] },
}
