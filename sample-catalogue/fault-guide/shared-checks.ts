import type { GuideCheck } from './guide-entries.ts'

// Checks that are the same on several kinds of appliance, whose causes then go by the same names.

export const anotherSocket: GuideCheck = {
  check: 'try another socket',
  how: 'Plug it into another socket that is known to be good, without an extension lead.',
  minutes: 3,
  competence: 'anyone',
  usual: 'the same there',
  otherwise: { 'works there': 0.03 },
  tells: { 'socket or house wiring at fault': { 'works there': 0.93 } },
}

export const waterWithPlugOut: GuideCheck = {
  check: 'water that comes with the plug out',
  how: 'While it fills, pull the plug. Does water still run in?',
  minutes: 3,
  hazards: ['water'],
  competence: 'anyone',
  usual: 'stops',
  otherwise: { 'still comes': 0.02 },
  tells: { 'inlet valve does not close': { 'still comes': 0.9 } },
}

export const levelSwitchContacts: GuideCheck = {
  check: 'level switch contacts',
  how: 'Isolate it, take the wires off, and measure both contacts at rest and while you blow gently into the switch.',
  measure: 'changeover',
  expected: 'changes over',
  minutes: 8,
  tools: ['meter', 'screwdriver'],
  hazards: ['mains'],
  competence: 'repairer',
  usual: 'within',
  otherwise: { outside: 0.04 },
  tells: { 'level switch failed': { outside: 0.89 } },
}

export const drainPumpCoil: GuideCheck = {
  check: 'drain pump coil',
  how: 'Isolate it, pull both tags off the drain pump, and measure across it.',
  measure: 'resistance',
  expected: '120..260 Ω',
  minutes: 8,
  tools: ['meter', 'screwdriver'],
  hazards: ['mains', 'water', 'sharp'],
  competence: 'repairer',
  usual: 'within',
  otherwise: { low: 0.01, high: 0.01, open: 0.02 },
  tells: { 'drain pump worn out': { low: 0.1, high: 0.06, open: 0.4 } },
}

export const inletValveCoil: GuideCheck = {
  check: 'inlet valve coil',
  how: 'Isolate it, pull both tags off the valve, and measure across its coil.',
  measure: 'resistance',
  expected: '2.5..5 kΩ',
  minutes: 8,
  tools: ['meter', 'screwdriver'],
  hazards: ['mains', 'water'],
  competence: 'repairer',
  usual: 'within',
  otherwise: { low: 0.01, high: 0.01, open: 0.02 },
  tells: { 'inlet valve failed': { low: 0.08, high: 0.05, open: 0.62 } },
}

export const wiresAtHeater: GuideCheck = {
  check: 'wires at the heater',
  how: 'Isolate it and look at the tags of the heater: off, loose, blue or burnt.',
  minutes: 6,
  tools: ['screwdriver', 'lamp'],
  hazards: ['mains', 'hot', 'sharp'],
  competence: 'repairer',
  usual: 'tight and bright',
  otherwise: { 'off or burnt': 0.03 },
  tells: {
    'wire off the heater': { 'off or burnt': 0.94 },
    'heater open circuit': { 'off or burnt': 0.1 },
  },
}

export const heaterResistance: GuideCheck = {
  check: 'heater resistance',
  how: 'Isolate it, pull one tag off the heater, and measure across it.',
  measure: 'resistance',
  expected: 'heater',
  tolerance: '10 %',
  minutes: 10,
  tools: ['meter', 'screwdriver'],
  hazards: ['mains', 'hot', 'sharp'],
  competence: 'repairer',
  usual: 'within',
  otherwise: { low: 0.015, high: 0.02, open: 0.015 },
  tells: {
    'heater open circuit': { low: 0.01, high: 0.05, open: 0.91 },
    'heater leaks to earth': { low: 0.08, high: 0.06, open: 0.22 },
  },
}

export const heaterToEarth: GuideCheck = {
  check: 'heater to earth',
  how: 'Isolate it, take both wires off the heater, and measure each end to its metal with an insulation tester.',
  measure: 'resistance',
  expected: 'at least 1 MΩ',
  minutes: 9,
  tools: ['insulation tester', 'screwdriver'],
  hazards: ['mains', 'sharp'],
  competence: 'repairer',
  usual: 'within',
  otherwise: { outside: 0.03 },
  tells: { 'heater leaks to earth': { outside: 0.93 }, 'heater open circuit': { outside: 0.12 } },
}

export const temperatureSensor: GuideCheck = {
  check: 'temperature sensor',
  how: 'Isolate it, unplug the sensor, take the temperature beside it, and measure across it. Write both.',
  measure: 'resistance',
  expected: 'ntc 4.8 kΩ at 25 °C, beta 3977 K',
  tolerance: '12 %',
  minutes: 8,
  tools: ['meter', 'thermometer'],
  hazards: ['mains', 'sharp'],
  competence: 'repairer',
  usual: 'within',
  otherwise: { low: 0.02, high: 0.02, open: 0.01 },
  tells: { 'temperature sensor out of range': { low: 0.22, high: 0.24, open: 0.46 } },
}

export const mainsLead: GuideCheck = {
  check: 'mains lead and plug',
  how: 'Unplug it. Look along the lead, and measure the earth pin to the bare metal of the frame.',
  measure: 'resistance',
  expected: 'at most 1 Ω',
  minutes: 5,
  tools: ['meter'],
  competence: 'anyone',
  usual: 'within',
  otherwise: { outside: 0.02 },
  tells: { 'mains lead damaged': { outside: 0.55 } },
}

export const mainsFilter: GuideCheck = {
  check: 'mains filter through and to earth',
  how: 'Isolate it, wait for its charge to go, and measure each line through the filter and to earth with its wires off.',
  minutes: 9,
  tools: ['meter', 'insulation tester'],
  hazards: ['mains', 'stored-charge'],
  competence: 'repairer',
  usual: 'through, none to earth',
  otherwise: { 'not through': 0.01, 'leaks to earth': 0.02 },
  tells: {
    'mains filter open circuit': { 'not through': 0.92, 'leaks to earth': 0.01 },
    'mains filter leaks to earth': { 'not through': 0.03, 'leaks to earth': 0.88 },
  },
}

export const runCapacitor: GuideCheck = {
  check: 'run capacitor',
  how: 'Isolate it, discharge the capacitor by a proper tool, take its wires off, and measure it. Write the value and judge it by its print.',
  minutes: 9,
  tools: ['capacitance meter', 'discharge tool'],
  hazards: ['mains', 'stored-charge'],
  competence: 'repairer',
  usual: 'as printed, or there is none',
  otherwise: { 'weak, open or bulged': 0.02 },
  tells: { 'run capacitor weak': { 'weak, open or bulged': 0.93 } },
}

export const voltageFromBoard: GuideCheck = {
  check: 'voltage where the board drives it',
  how: 'With the supply on, measure at the plug of the part while the board should drive it.',
  measure: 'voltage',
  expected: '207..253 V',
  minutes: 10,
  tools: ['meter for live work'],
  hazards: ['mains', 'stored-charge', 'water'],
  competence: 'live-testing',
  usual: 'within',
  otherwise: { low: 0.06, high: 0.005 },
  tells: { 'control board failed': { low: 0.88, high: 0.01 } },
}
