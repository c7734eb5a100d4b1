export type SampleFittingNote = {
  readonly stage: 'before' | 'fitting' | 'test'
  readonly note: string
  /** Kinds of part; none of them may be licensed work, which has no notes here. */
  readonly kinds: readonly string[]
}

const pumps = ['dishwasher-drain-pump', 'washer-drain-pump', 'circulation-pump', 'condenser-pump']
const hoses = ['fill-hose', 'drain-hose']
const valves = ['inlet-valve']
const wetSeals = ['dishwasher-door-seal', 'washer-door-seal']
const heaters = [
  'dishwasher-element',
  'washer-element',
  'dryer-element',
  'fan-element',
  'grill-element',
  'base-element',
  'defrost-heater',
]
const wetHeaters = ['dishwasher-element', 'washer-element']
const sensors = ['dishwasher-temperature-sensor', 'washer-temperature-sensor', 'fridge-sensor']
const locks = ['dishwasher-door-lock', 'washer-door-lock', 'dryer-door-switch']
const thermalDevices = [
  'dryer-thermal-cut-out',
  'dryer-thermostat',
  'oven-thermal-cut-out',
  'oven-thermostat',
  'motor-thermal-cut-out',
  'fridge-thermostat',
]
const levelDevices = ['float-switch', 'pressure-switch']
const safetyDevices = [...locks, ...thermalDevices, ...levelDevices, 'earth-strap', 'start-device']
const belts = ['washer-belt', 'dryer-belt', 'vacuum-belt']
const motors = ['dryer-motor', 'fan-motor', 'cooling-fan', 'fridge-fan', 'vacuum-motor']
const brushes = ['carbon-brushes', 'vacuum-brushes']
const capacitors = ['run-capacitor', 'mains-filter', 'start-device']
const boards = ['dishwasher-control-board', 'washer-control-board', 'oven-timer']
const watery = [
  ...pumps,
  ...hoses,
  ...valves,
  ...wetSeals,
  ...wetHeaters,
  'pressure-switch',
  'float-switch',
  'sump-filter',
  'soap-drawer',
]
const wired = [
  ...pumps,
  ...valves,
  ...heaters,
  ...sensors,
  ...safetyDevices,
  ...motors,
  ...boards,
  'selector-switch',
  'mains-filter',
]

/** What a repairer tells an apprentice. Common practice, without a source. */
export const fittingNotes: readonly SampleFittingNote[] = [
  { stage: 'before', note: 'Photograph wires and hoses before the first one comes off.', kinds: wired },
  {
    stage: 'before',
    note: 'Hold the new part beside the old one: fixings, pins, flow and hand.',
    kinds: wired,
  },
  {
    stage: 'before',
    note: 'Release the clip before pulling: a plug is pulled by its body, never by the wires.',
    kinds: wired,
  },
  { stage: 'before', note: 'Water off, hose drained into a bucket, towel under it.', kinds: watery },
  {
    stage: 'before',
    note: 'Discharge it by a proper tool and prove it before touching the terminals.',
    kinds: capacitors,
  },
  {
    stage: 'before',
    note: 'Let it cool, and wear gloves at panel edges.',
    kinds: [
      ...heaters,
      'oven-door-glass',
      'oven-door-hinge',
      'dryer-belt',
      'drum-bearing',
      'drum-bearing-pad',
    ],
  },
  {
    stage: 'before',
    note: 'Lock the hinge before the door comes off, and lift it with two hands.',
    kinds: ['oven-door-hinge', 'oven-door-glass', 'oven-door-seal'],
  },
  { stage: 'before', note: 'Mark how the belt runs, ribs and pulleys, before it comes off.', kinds: belts },
  {
    stage: 'before',
    note: 'Hold the spring while it is unhooked: it flies.',
    kinds: ['door-spring-cord', 'cord-reel'],
  },
  {
    stage: 'before',
    note: 'Touch bare metal of the frame before the board is taken out of its bag.',
    kinds: boards,
  },

  {
    stage: 'fitting',
    note: 'Follow the arrow: flow, turn or top must point as on the old one.',
    kinds: [...pumps, ...valves, 'washer-door-seal', 'exhaust-filter', 'water-filter'],
  },
  {
    stage: 'fitting',
    note: 'Seat the seal dry and clean, and check it all round with a finger.',
    kinds: [...pumps, ...wetHeaters, 'dishwasher-door-seal', 'oven-door-seal', 'fridge-door-seal'],
  },
  {
    stage: 'fitting',
    note: 'Begin at the mark at the top, drain holes at the bottom, then clamp or spring.',
    kinds: ['washer-door-seal'],
  },
  {
    stage: 'fitting',
    note: 'Coarse screws into plastic, fine screws into metal, hand tight: a turned thread leaks or rattles.',
    kinds: [...pumps, ...valves, ...locks, ...levelDevices, ...heaters, 'detergent-dispenser'],
  },
  {
    stage: 'fitting',
    note: 'Renew hose clips that have lost their spring, and set them back on their mark.',
    kinds: [...pumps, ...hoses, ...valves],
  },
  {
    stage: 'fitting',
    note: 'Hose washers new, nut by hand and a quarter turn, no kink behind the machine.',
    kinds: hoses,
  },
  {
    stage: 'fitting',
    note: 'Renew every blue or burnt tag; a loose one burns again.',
    kinds: [...heaters, 'selector-switch', ...thermalDevices],
  },
  {
    stage: 'fitting',
    note: 'Straps, clips and cable ties back where they were, wires clear of edges, heat and moving parts.',
    kinds: wired,
  },
  {
    stage: 'fitting',
    note: 'Earth wire on its own screw, bare metal under it, tight.',
    kinds: [
      ...heaters,
      ...motors,
      'earth-strap',
      'mains-filter',
      'mains-lead',
      'dishwasher-drain-pump',
      'washer-drain-pump',
      'circulation-pump',
    ],
  },
  {
    stage: 'fitting',
    note: 'Like for like: only the number listed for this model. Never bridged, not even for a test.',
    kinds: safetyDevices,
  },
  {
    stage: 'fitting',
    note: 'Float back on its guide; it must drop by itself.',
    kinds: ['float-switch', 'condenser-pump'],
  },
  {
    stage: 'fitting',
    note: 'Level hose without kink or water in it, tight at both ends.',
    kinds: ['pressure-switch'],
  },
  {
    stage: 'fitting',
    note: 'Bulb or sensor pushed home in its clip or pocket, capillary without a kink.',
    kinds: ['oven-thermostat', 'fridge-thermostat', ...sensors],
  },
  {
    stage: 'fitting',
    note: 'Both of a pair, and the seal with the bearing.',
    kinds: ['damper', 'carbon-brushes', 'vacuum-brushes', 'oven-door-hinge', 'drum-bearing'],
  },
  {
    stage: 'fitting',
    note: 'Brushes slide freely, their curve along the turn, commutator clean.',
    kinds: brushes,
  },
  {
    stage: 'fitting',
    note: 'Belt in the middle of its pulleys; turn it by hand three times before it runs.',
    kinds: belts,
  },
  {
    stage: 'fitting',
    note: 'Drum back on its pads and felts, nothing trapped at the rim.',
    kinds: ['dryer-belt', 'drum-bearing-pad', 'drum-lifter'],
  },
  {
    stage: 'fitting',
    note: 'Printed side inward, every clip home, no splinter left in the door.',
    kinds: ['oven-door-glass'],
  },
  {
    stage: 'fitting',
    note: 'Warm the seal and pull it into shape; paper must hold all round.',
    kinds: ['fridge-door-seal'],
  },
  {
    stage: 'fitting',
    note: 'Thaw all ice, clear the drain, cover back tight before it runs.',
    kinds: ['defrost-heater', 'fridge-fan', 'fridge-sensor'],
  },
  {
    stage: 'fitting',
    note: 'Lamp of the right watts and heat, turned home cold; glass cover back with its seal.',
    kinds: ['lamp'],
  },
  {
    stage: 'fitting',
    note: 'Arm turns by a tap of the finger, its nut or clip home.',
    kinds: ['spray-arm', 'basket-wheel'],
  },
  {
    stage: 'fitting',
    note: 'Filter turned home till it stops: the pump takes no glass.',
    kinds: ['sump-filter', 'dishwasher-drain-pump'],
  },
  {
    stage: 'fitting',
    note: 'Set options or code as its maker says before the cover goes on.',
    kinds: boards,
  },
  {
    stage: 'fitting',
    note: 'Fan turns free of its cover by hand.',
    kinds: ['fan-motor', 'cooling-fan', 'fridge-fan'],
  },
  {
    stage: 'fitting',
    note: 'Bag or filter home, cover shut without force.',
    kinds: ['dust-bags', 'exhaust-filter', 'fluff-filter', 'vacuum-hose'],
  },

  {
    stage: 'test',
    note: 'Earth continuity and insulation tested before the plug goes in; write the readings down.',
    kinds: [...wired, 'mains-lead', 'dryer-belt'],
  },
  {
    stage: 'test',
    note: 'First run watched to the end of fill, heat and drain, lamp and dry paper underneath for leaks.',
    kinds: watery,
  },
  {
    stage: 'test',
    note: 'See that it acts: door opened, float lifted or heat cut, and the machine stops.',
    kinds: [...locks, 'float-switch', 'dryer-thermal-cut-out', 'oven-thermal-cut-out'],
  },
  {
    stage: 'test',
    note: 'Heat run with a thermometer until it has switched off and on once.',
    kinds: [...heaters, 'dryer-thermostat', 'oven-thermostat', 'fridge-thermostat', ...sensors],
  },
  {
    stage: 'test',
    note: 'One spin at full speed, hands off, machine level and feet locked.',
    kinds: ['damper', 'drum-bearing', 'washer-belt', 'carbon-brushes'],
  },
  {
    stage: 'test',
    note: 'Runs quiet and straight for five minutes, no smell.',
    kinds: [...belts, ...motors, ...brushes, 'drum-bearing-pad'],
  },
  { stage: 'test', note: 'Every function tried once, and the customer shown what changed.', kinds: boards },
  {
    stage: 'test',
    note: 'Water drained, lid opened and arm turned in one short programme.',
    kinds: ['detergent-dispenser', 'spray-arm', 'sump-filter', 'soap-drawer'],
  },
  {
    stage: 'test',
    note: 'Cooling seen on a thermometer after an hour, door falling shut by itself.',
    kinds: [
      'fridge-thermostat',
      'start-device',
      'fridge-fan',
      'defrost-heater',
      'fridge-door-seal',
      'fridge-door-hinge',
    ],
  },
]
