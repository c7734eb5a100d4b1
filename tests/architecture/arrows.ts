/** The arrows of the house: which place may import from which, and which packages. The same that `biome.json` shows while typing. */
export interface Place {
  readonly name: string
  /** Files and folders, from the repository's top. */
  readonly holds: readonly string[]
  readonly mayImport: readonly string[]
  readonly packages: readonly RegExp[]
}

const node = /^node:/
const zod = /^zod$/

const capability = (
  name: string,
  others: readonly string[] = [],
  packages: readonly RegExp[] = [],
): Place => ({
  name,
  holds: [`electron/${name}`],
  mayImport: ['shared-schemas', 'requests', 'database handles', ...others],
  packages: [zod, /^fuse\.js$/, /^papaparse$/, /^big\.js$/, /^@stdlib\//, node, ...packages],
})

const capabilities: readonly Place[] = [
  capability('catalogue', [], [/^@e965\/xlsx$/]),
  capability('model-lookup', ['catalogue']),
  capability('fit-check', ['model-lookup', 'catalogue']),
  capability('order-check', ['fit-check', 'model-lookup', 'catalogue']),
  capability('stock-ledger', ['catalogue']),
  capability('van-counts', ['stock-ledger', 'catalogue']),
  capability('jobs', ['stock-ledger', 'catalogue']),
  capability('fault-guide', ['catalogue']),
  capability('reorder', ['stock-ledger', 'catalogue'], [/^highs$/]),
  capability(
    'order-sheets',
    ['reorder', 'fit-check', 'catalogue', 'stock-ledger'],
    [/^pdfkit$/, /^xmlbuilder2$/],
  ),
]

/** The first place that holds a file is its place, so that a file named by itself comes before its folder. */
export const places: readonly Place[] = [
  { name: 'shared-schemas', holds: ['shared-schemas'], mayImport: [], packages: [zod] },
  {
    name: 'renderer',
    holds: ['renderer'],
    mayImport: ['shared-schemas'],
    packages: [/^react(-dom)?(\/|$)/, /^@tanstack\/react-/, /^@fontsource-variable\//, /^fuse\.js$/, zod],
  },
  {
    name: 'main',
    holds: ['electron/main.ts'],
    mayImport: ['shared-schemas', 'hosts'],
    packages: [/^electron$/, node, /^uuid$/],
  },
  { name: 'preload', holds: ['electron/preload.ts'], mayImport: [], packages: [/^electron$/] },
  {
    name: 'application',
    holds: ['electron/application.ts'],
    mayImport: [
      'shared-schemas',
      'requests',
      'database',
      'database handles',
      ...capabilities.map(({ name }) => name),
    ],
    packages: [],
  },
  {
    name: 'requests',
    holds: ['electron/requests'],
    mayImport: ['shared-schemas', 'database handles'],
    packages: [zod],
  },
  {
    name: 'database handles',
    holds: ['electron/database/handles.ts'],
    mayImport: ['requests'],
    packages: [zod, /^better-sqlite3$/],
  },
  {
    // Puts a copy in the place of the shop's file, which nobody may have open: so a host calls it, not a handler.
    name: 'database restoring',
    holds: ['electron/database/restore-database.ts'],
    mayImport: ['requests', 'database'],
    packages: [/^better-sqlite3$/, node],
  },
  {
    name: 'database',
    holds: ['electron/database'],
    mayImport: ['shared-schemas', 'requests', 'database handles'],
    packages: [zod, /^better-sqlite3$/, node],
  },
  ...capabilities,
  {
    name: 'hosts',
    holds: ['electron/hosts'],
    mayImport: ['shared-schemas', 'application', 'requests', 'database restoring', 'package.json'],
    packages: [zod, node, /^uuid$/, /^papaparse$/],
  },
  {
    name: 'start',
    holds: ['electron/start'],
    mayImport: ['shared-schemas', 'hosts', 'requests', 'packaging'],
    packages: [zod, node, /^open$/],
  },
  {
    name: 'packaging',
    holds: ['electron/packaging'],
    mayImport: [],
    packages: [node, /^vite$/, /^@vitejs\/plugin-react$/, /^app-builder-lib\//, /^builder-util$/],
  },
  { name: 'sample-catalogue', holds: ['sample-catalogue'], mayImport: [], packages: [node, /^papaparse$/] },
  { name: 'package.json', holds: ['package.json'], mayImport: [], packages: [] },
]

/** The place of a file; a file in none is in the wrong folder, or its folder is not drawn here yet. */
export function placeOf(file: string): Place | undefined {
  return places.find(({ holds }) => holds.some(held => file === held || file.startsWith(`${held}/`)))
}
