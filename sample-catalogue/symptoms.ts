import type { ApplianceType } from './appliance-types.ts'

/** What customers say on the telephone, how often, and what it then mostly turns out to be. */
export type Symptom = {
  readonly says: string
  readonly weight: number
  /** Kinds of part, likeliest first. */
  readonly kinds: readonly string[]
}

export const symptoms: Readonly<Record<ApplianceType, readonly Symptom[]>> = {
  dishwasher: [
    { says: 'over-fills', weight: 5, kinds: ['inlet-valve', 'float-switch', 'pressure-switch'] },
    { says: 'does not fill', weight: 4, kinds: ['inlet-valve', 'fill-hose', 'float-switch'] },
    { says: 'does not drain', weight: 7, kinds: ['dishwasher-drain-pump', 'drain-hose', 'sump-filter'] },
    {
      says: 'does not heat',
      weight: 5,
      kinds: ['dishwasher-element', 'dishwasher-temperature-sensor', 'dishwasher-control-board'],
    },
    { says: 'dishes stay dirty', weight: 4, kinds: ['circulation-pump', 'spray-arm', 'sump-filter'] },
    { says: 'leaks at the door', weight: 3, kinds: ['dishwasher-door-seal', 'door-spring-cord'] },
    {
      says: 'will not start',
      weight: 3,
      kinds: ['dishwasher-door-lock', 'mains-filter', 'dishwasher-control-board'],
    },
    { says: 'basket runs badly', weight: 2, kinds: ['basket-wheel'] },
    { says: 'tablet not released', weight: 2, kinds: ['detergent-dispenser'] },
  ],
  washer: [
    { says: 'does not drain', weight: 7, kinds: ['washer-drain-pump', 'drain-hose'] },
    { says: 'does not spin', weight: 5, kinds: ['carbon-brushes', 'washer-belt', 'run-capacitor'] },
    { says: 'door will not open', weight: 5, kinds: ['washer-door-lock'] },
    { says: 'leaks at the door', weight: 4, kinds: ['washer-door-seal'] },
    { says: 'does not heat', weight: 4, kinds: ['washer-element', 'washer-temperature-sensor'] },
    { says: 'does not fill', weight: 3, kinds: ['inlet-valve', 'fill-hose'] },
    { says: 'over-fills', weight: 2, kinds: ['pressure-switch', 'inlet-valve'] },
    { says: 'bangs when spinning', weight: 4, kinds: ['damper', 'drum-bearing'] },
    { says: 'trips the supply', weight: 2, kinds: ['washer-element', 'mains-filter'] },
  ],
  dryer: [
    { says: 'drum does not turn', weight: 6, kinds: ['dryer-belt', 'run-capacitor', 'dryer-motor'] },
    {
      says: 'does not heat',
      weight: 6,
      kinds: ['dryer-thermal-cut-out', 'dryer-element', 'dryer-thermostat'],
    },
    { says: 'squeals', weight: 3, kinds: ['drum-bearing-pad', 'dryer-belt'] },
    { says: 'will not start', weight: 3, kinds: ['dryer-door-switch', 'mains-filter'] },
    { says: 'tank light stays on', weight: 2, kinds: ['condenser-pump'] },
  ],
  oven: [
    { says: 'does not heat', weight: 8, kinds: ['fan-element', 'oven-thermal-cut-out', 'oven-thermostat'] },
    { says: 'grill does not heat', weight: 4, kinds: ['grill-element', 'selector-switch'] },
    { says: 'door does not close', weight: 3, kinds: ['oven-door-hinge', 'oven-door-seal'] },
    { says: 'fan is noisy', weight: 3, kinds: ['fan-motor', 'cooling-fan'] },
    { says: 'lamp is out', weight: 2, kinds: ['lamp'] },
    { says: 'clock is dead', weight: 2, kinds: ['oven-timer'] },
  ],
  hob: [
    { says: 'plate does not heat', weight: 4, kinds: ['hotplate', 'radiant-element', 'energy-regulator'] },
    { says: 'flame goes out', weight: 4, kinds: ['thermocouple', 'gas-valve'] },
    { says: 'does not spark', weight: 3, kinds: ['spark-generator'] },
    { says: 'knob broken', weight: 3, kinds: ['control-knob'] },
  ],
  fridge: [
    { says: 'does not cool', weight: 6, kinds: ['fridge-thermostat', 'start-device', 'compressor'] },
    { says: 'ices up', weight: 4, kinds: ['defrost-heater', 'fridge-sensor', 'fridge-fan'] },
    { says: 'door does not seal', weight: 4, kinds: ['fridge-door-seal', 'fridge-door-hinge'] },
    { says: 'lamp is out', weight: 2, kinds: ['lamp'] },
  ],
  microwave: [
    { says: 'does not heat', weight: 4, kinds: ['magnetron', 'high-voltage-diode', 'microwave-fuse'] },
    { says: 'plate does not turn', weight: 4, kinds: ['turntable-motor', 'turntable-plate'] },
    { says: 'sparks inside', weight: 2, kinds: ['waveguide-cover'] },
    { says: 'will not start', weight: 2, kinds: ['microwave-door-switch', 'microwave-fuse'] },
  ],
  vacuum: [
    { says: 'no suction', weight: 4, kinds: ['vacuum-hose', 'exhaust-filter', 'dust-bags'] },
    { says: 'motor is dead', weight: 3, kinds: ['vacuum-motor', 'vacuum-brushes', 'motor-thermal-cut-out'] },
    { says: 'brush does not turn', weight: 3, kinds: ['vacuum-belt', 'brush-bar'] },
    { says: 'cord does not wind', weight: 2, kinds: ['cord-reel'] },
  ],
}
