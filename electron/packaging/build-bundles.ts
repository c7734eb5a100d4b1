import { cp, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import react from '@vitejs/plugin-react'
import { build, type Plugin } from 'vite'
import { noteBuild } from './build-freshness.ts'
import { gatherPackages, writeNotices } from './third-party-notices.ts'

const root = path.join(import.meta.dirname, '../..')
const dist = path.join(root, 'dist')
/** The faces of printed pages stand beside the bundle that draws them, as they do beside its source. */
const faces = 'electron/order-sheets/export/faces'
/** The solver of the order building loads its program from beside its bundle, as it does from beside its source. */
const solver = 'node_modules/highs/build/highs.wasm'
const withMachineCode = 'better-sqlite3'
const quiet = { configFile: false, logLevel: 'warn' } as const

/**
 * Makes `dist/` anew: the page, one bundle for each program that runs without these sources, and the notices of whose
 * work stands in them.
 */
export async function buildBundles(): Promise<void> {
  await rm(dist, { recursive: true, force: true })
  const { plugin, folders } = gatherPackages()
  await asProduction(() => buildPage(plugin))
  await buildForNode(
    {
      main: 'electron/main.ts',
      engine: 'electron/hosts/engine.ts',
      'keep-index-thread': 'electron/hosts/keep-index-thread.ts',
      tallyplate: 'electron/hosts/command-line.ts',
    },
    { plugin, format: 'es', extension: 'js' },
  )
  // A sandboxed preload script is loaded as CommonJS, whole, and may require nothing but Electron.
  await buildForNode({ preload: 'electron/preload.ts' }, { plugin, format: 'cjs', extension: 'cjs' })
  await cp(path.join(root, faces), path.join(dist, 'faces'), { recursive: true })
  await cp(path.join(root, solver), path.join(dist, path.basename(solver)))
  const unbundled = path.join(root, 'node_modules', withMachineCode)
  await writeFile(path.join(dist, 'third-party-notices.txt'), writeNotices([...folders, unbundled]))
  await noteBuild(root)
}

/** Tests set NODE_ENV, by which Vite and React would make the page of their slow development halves. */
async function asProduction(work: () => Promise<unknown>): Promise<void> {
  const { NODE_ENV: before } = process.env
  process.env.NODE_ENV = 'production'
  try {
    await work()
  } finally {
    if (before === undefined) delete process.env.NODE_ENV
    else process.env.NODE_ENV = before
  }
}

function buildPage(plugin: Plugin): Promise<unknown> {
  return build({
    ...quiet,
    root: path.join(root, 'renderer'),
    // Relative addresses serve the custom protocol and the loopback host alike.
    base: './',
    plugins: [react(), plugin],
    build: {
      outDir: path.join(dist, 'renderer'),
      emptyOutDir: true,
      // The policy allows no data: fonts, and a hashed file is cached for good.
      assetsInlineLimit: 0,
      // The polyfill would be an inline script, which the policy forbids.
      modulePreload: { polyfill: false },
      // A desktop program reads its one bundle from the disk: its size is no page-load question.
      chunkSizeWarningLimit: 4096,
    },
  })
}

interface NodeBundle {
  readonly plugin: Plugin
  readonly format: 'es' | 'cjs'
  readonly extension: string
}

/** Everything inside one file, except Electron itself and the module with machine code. */
function buildForNode(entries: Readonly<Record<string, string>>, { plugin, format, extension }: NodeBundle) {
  return build({
    ...quiet,
    root,
    plugins: [plugin],
    build: {
      ssr: true,
      outDir: dist,
      emptyOutDir: false,
      target: 'node24',
      minify: false,
      sourcemap: format === 'es',
      rolldownOptions: {
        input: Object.fromEntries(
          Object.entries(entries).map(([name, source]) => [name, path.join(root, source)]),
        ),
        external: ['electron', withMachineCode],
        output: {
          format,
          entryFileNames: `[name].${extension}`,
          chunkFileNames: `[name]-[hash].${extension}`,
        },
      },
    },
    ssr: { noExternal: true },
  })
}
