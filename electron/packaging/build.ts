import { buildBundles } from './build-bundles.ts'

const startedAt = performance.now()
await buildBundles()
console.log(`dist/ is built (${((performance.now() - startedAt) / 1000).toFixed(1)} s).`)
