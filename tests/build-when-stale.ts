import path from 'node:path'
import { buildBundles } from '../electron/packaging/build-bundles.ts'
import { isBuildFresh } from '../electron/packaging/build-freshness.ts'

/** Runs before the tests of whole programs: what they start is built from the sources as they stand. */
export default async function buildWhenStale(): Promise<void> {
  if (!(await isBuildFresh(path.join(import.meta.dirname, '..')))) await buildBundles()
}
