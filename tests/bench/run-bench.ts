import { readdirSync } from 'node:fs'
import path from 'node:path'

/** `npm run bench [-- words]`: runs each `…-bench.ts` of this folder in turn, or those whose name holds a word. */
const words = process.argv.slice(2)
const files = readdirSync(import.meta.dirname)
  .filter(file => file.endsWith('-bench.ts'))
  .filter(file => words.length === 0 || words.some(word => file.includes(word)))
  .sort()

if (files.length === 0) {
  console.error(`No bench is called ${words.join(' or ')}. Leave the words out to run them all.`)
  process.exit(2)
}
for (const file of files) {
  console.log(`\n${file}`)
  const bench: { run: () => Promise<void> } = await import(path.join(import.meta.dirname, file))
  await bench.run()
}
