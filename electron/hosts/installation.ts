import path from 'node:path'
import packageFile from '../../package.json' with { type: 'json' }

const isSource = import.meta.filename.endsWith('.ts')

/** The checkout, or the folder that the packaged bundles' `dist/` stands in. */
export const programFolder = path.join(import.meta.dirname, isSource ? '../..' : '..')

/** The built page. */
export const pageFolder = path.join(programFolder, 'dist/renderer')

/** The built engine: one file, which starts three times as fast as its sources. */
export const builtEngine = path.join(programFolder, 'dist/engine.js')

export const sampleFolder = path.join(programFolder, 'sample-catalogue')

export const programVersion = packageFile.version
