import { type ApplianceGuide, licensed, mend, normal, part, symptom } from './guide-entries.ts'
import { anotherSocket } from './shared-checks.ts'

/** Whatever lies behind the cover of a microwave oven is left to a certified person, the smallest part of it too. */
const high = (weight: number) =>
  licensed(
    'high-voltage circuit at fault',
    'microwave-hv',
    weight,
    'magnetron|high-voltage-capacitor|high-voltage-diode',
  )
const doorSwitch = (weight: number) =>
  licensed('door switch at fault', 'microwave-hv', weight, 'microwave-door-switch')
const fuse = (weight: number) =>
  licensed('fuse behind the cover blown', 'microwave-hv', weight, 'microwave-fuse')
const supply = (weight: number) => licensed('socket or house wiring at fault', 'fixed-wiring', weight)

export const microwaveGuide: ApplianceGuide = {
  type: 'microwave',
  symptoms: [
    symptom(
      'does not heat',
      'food stays cold|runs but no heat|does not warm',
      high(64),
      doorSwitch(14),
      mend(
        'power set low or demonstration mode',
        18,
        'Set full power, and leave the demonstration as the manual says.',
      ),
      normal('low power pulses', 6, 'At low settings it heats a few seconds in each half minute.'),
    ),
    symptom(
      'will not start',
      'dead|no lights|nothing happens|does not react',
      fuse(24),
      doorSwitch(24),
      supply(24),
      mend('child lock is on', 14, 'Hold the key that the panel names.'),
      mend('door does not close home', 10, 'Clean the catch; never force it.'),
      part(
        'mains lead damaged',
        'mains-lead',
        4,
        'Never taped; only where it is changed without opening the cover.',
      ),
    ),
    symptom(
      'plate does not turn',
      'turntable stands still|plate stuck|does not rotate',
      mend('plate or ring not in place', 34, 'Set ring and coupling in, and turn by hand.'),
      part(
        'turntable motor failed',
        'turntable-motor',
        40,
        'Only where it is reached through the plate underneath, unplugged; the cover stays on.',
      ),
      part('turntable plate chipped or wrong', 'turntable-plate', 12, 'Measure across and the middle.'),
      mend('coupling cracked', 10, 'Look at its three arms.'),
      normal('turns the other way each time', 8, 'Many start in either direction.'),
    ),
    symptom(
      'sparks inside',
      'arcs|flashes|crackles|blue light inside',
      mend('metal or foil inside', 36, 'No metal, foil or gilt rim.'),
      licensed('wave inlet cover burnt', 'microwave-hv', 44, 'waveguide-cover'),
      mend('fat on wall or cover', 22, 'Wash it with soap, dry, and try a cup of water.'),
      licensed('paint burnt through to metal', 'microwave-hv', 14),
    ),
    symptom(
      'stops after a minute',
      'switches itself off|cuts out|runs then stops',
      mend('air slots covered', 36, 'A hand of air all round, nothing on top.'),
      licensed('cooling fan behind the cover at fault', 'microwave-hv', 34, 'cooling-fan'),
      doorSwitch(16),
      high(14),
    ),
    symptom(
      'trips the supply',
      'fuse blows|trips the breaker|kills the electrics',
      high(38),
      doorSwitch(34),
      supply(18),
      part(
        'mains lead damaged',
        'mains-lead',
        6,
        'Never taped; only where it is changed without opening the cover.',
      ),
    ),
    symptom(
      'lamp is out',
      'no light|bulb gone|dark inside',
      licensed('lamp behind the cover burnt out', 'microwave-hv', 92, 'lamp'),
      normal('lamp is off while the door is open', 8, 'Some light only while they run.'),
    ),
    symptom(
      'noisy',
      'hums loudly|buzzes|grates|rattles',
      high(26),
      normal('hums and clicks at low power', 26, 'It switches on and off and hums while on.'),
      mend('plate or ring not in place', 28, 'Clean ring and track.'),
      licensed('cooling fan behind the cover at fault', 'microwave-hv', 16, 'cooling-fan'),
      part(
        'turntable motor failed',
        'turntable-motor',
        10,
        'Only where it is reached through the plate underneath, unplugged; the cover stays on.',
      ),
    ),
  ],
  checks: [
    {
      check: 'ask for setting and dish',
      how: 'Ask for power and time, what stood in it, and what the panel shows.',
      minutes: 2,
      competence: 'anyone',
      usual: 'nothing unusual',
      otherwise: { 'low power, lock or demonstration': 0.06, 'metal, foil or gilt': 0.05 },
      tells: {
        'power set low or demonstration mode': {
          'low power, lock or demonstration': 0.9,
          'metal, foil or gilt': 0.01,
        },
        'low power pulses': { 'low power, lock or demonstration': 0.9, 'metal, foil or gilt': 0.01 },
        'hums and clicks at low power': {
          'low power, lock or demonstration': 0.7,
          'metal, foil or gilt': 0.01,
        },
        'child lock is on': { 'low power, lock or demonstration': 0.9, 'metal, foil or gilt': 0.01 },
        'metal or foil inside': { 'low power, lock or demonstration': 0.02, 'metal, foil or gilt': 0.88 },
      },
    },
    {
      check: 'a cup of water for a minute',
      how: 'Put a cup of water in, full power for one minute, and feel the cup with care.',
      minutes: 3,
      hazards: ['hot'],
      competence: 'anyone',
      usual: 'it runs and the water is warm',
      otherwise: { 'it runs, the water is cold': 0.06, 'it does not run': 0.08, 'it stops': 0.03 },
      tells: {
        'high-voltage circuit at fault': {
          'it runs, the water is cold': 0.7,
          'it does not run': 0.1,
          'it stops': 0.08,
        },
        'door switch at fault': {
          'it runs, the water is cold': 0.25,
          'it does not run': 0.6,
          'it stops': 0.08,
        },
        'fuse behind the cover blown': {
          'it runs, the water is cold': 0.01,
          'it does not run': 0.97,
          'it stops': 0.01,
        },
        'socket or house wiring at fault': {
          'it runs, the water is cold': 0.01,
          'it does not run': 0.9,
          'it stops': 0.05,
        },
        'cooling fan behind the cover at fault': {
          'it runs, the water is cold': 0.02,
          'it does not run': 0.05,
          'it stops': 0.45,
        },
        'air slots covered': { 'it runs, the water is cold': 0.01, 'it does not run': 0.02, 'it stops': 0.4 },
        'mains lead damaged': {
          'it runs, the water is cold': 0.01,
          'it does not run': 0.88,
          'it stops': 0.04,
        },
      },
    },
    anotherSocket,
    {
      check: 'air slots',
      how: 'Look at the slots at the sides, the back and the top, and clear what covers them.',
      minutes: 2,
      competence: 'anyone',
      usual: 'free',
      otherwise: { covered: 0.08 },
      tells: { 'air slots covered': { covered: 0.93 } },
    },
    {
      check: 'door and catch from outside',
      how: 'Look at hinge, catch and seal, wipe them, and close the door slowly. Nothing is taken off.',
      minutes: 2,
      competence: 'anyone',
      usual: 'closes with a clear click',
      otherwise: { 'does not close home': 0.04 },
      tells: {
        'door does not close home': { 'does not close home': 0.93 },
        'door switch at fault': { 'does not close home': 0.12 },
      },
    },
    {
      check: 'plate, ring and coupling',
      how: 'Lift the plate out, look at its tracks, the ring and the coupling, and turn them by hand.',
      minutes: 2,
      competence: 'anyone',
      usual: 'in place and whole',
      otherwise: { 'not in place or dirty': 0.08, 'coupling cracked': 0.02, 'plate chipped or wrong': 0.02 },
      tells: {
        'plate or ring not in place': { 'not in place or dirty': 0.92, 'coupling cracked': 0.01 },
        'coupling cracked': { 'not in place or dirty': 0.04, 'coupling cracked': 0.92 },
        'turntable plate chipped or wrong': { 'not in place or dirty': 0.06, 'plate chipped or wrong': 0.88 },
      },
    },
    {
      check: 'watch the coupling turn',
      how: 'Plate out, a cup of water in, one minute: does the coupling turn?',
      symptoms: ['plate does not turn', 'noisy'],
      minutes: 2,
      competence: 'anyone',
      usual: 'turns',
      otherwise: { 'stands still or grates': 0.05, 'the other way now and then': 0.04 },
      tells: {
        'turntable motor failed': { 'stands still or grates': 0.92, 'the other way now and then': 0.01 },
        'turns the other way each time': {
          'stands still or grates': 0.01,
          'the other way now and then': 0.92,
        },
      },
    },
    {
      check: 'look at walls and wave inlet',
      how: 'Unplug it and look inside with a lamp: burns on the cover at the side, bare metal, fat.',
      minutes: 2,
      tools: ['lamp'],
      hazards: ['hot'],
      competence: 'anyone',
      usual: 'clean',
      otherwise: { 'cover burnt': 0.04, 'fat on wall or cover': 0.12, 'bare or burnt metal': 0.02 },
      tells: {
        'wave inlet cover burnt': {
          'cover burnt': 0.88,
          'fat on wall or cover': 0.06,
          'bare or burnt metal': 0.02,
        },
        'fat on wall or cover': {
          'cover burnt': 0.04,
          'fat on wall or cover': 0.9,
          'bare or burnt metal': 0.01,
        },
        'paint burnt through to metal': {
          'cover burnt': 0.06,
          'fat on wall or cover': 0.05,
          'bare or burnt metal': 0.86,
        },
      },
    },
    {
      check: 'when it trips',
      how: 'Ask: when it is plugged in, when the door is closed or opened, or when it begins to heat?',
      symptoms: ['trips the supply'],
      minutes: 1,
      competence: 'anyone',
      usual: 'when it begins to heat',
      otherwise: { 'at the door': 0.2, 'when plugged in': 0.15 },
      tells: {
        'high-voltage circuit at fault': { 'at the door': 0.05, 'when plugged in': 0.05 },
        'door switch at fault': { 'at the door': 0.85, 'when plugged in': 0.03 },
        'mains lead damaged': { 'at the door': 0.03, 'when plugged in': 0.85 },
        'socket or house wiring at fault': { 'at the door': 0.1, 'when plugged in': 0.5 },
      },
    },
    {
      check: 'lamp while it runs',
      how: 'Run it with a cup of water: does the lamp burn then?',
      symptoms: ['lamp is out'],
      minutes: 1,
      competence: 'anyone',
      usual: 'stays dark',
      otherwise: { 'burns then': 0.02 },
      tells: { 'lamp is off while the door is open': { 'burns then': 0.96 } },
    },
    {
      check: 'mains lead from outside',
      how: 'Unplug it and look along lead and plug.',
      minutes: 2,
      competence: 'anyone',
      usual: 'sound',
      otherwise: { damaged: 0.02 },
      tells: { 'mains lead damaged': { damaged: 0.85 } },
    },
  ],
}
