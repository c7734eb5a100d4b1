import path from 'node:path'
import { defineConfig } from 'vitest/config'

/** Only what proves the fit check: every mutant is tried with these, so what does not judge it is left out. */
export default defineConfig({
  root: path.join(import.meta.dirname, '../..'),
  test: {
    environment: 'node',
    include: [
      'tests/electron/fit-check/*.test.ts',
      'tests/electron/catalogue/{compare-serials,date-code-meaning,measured-values}.test.ts',
      'tests/outside/{capacitors-and-tabs,kleene-tables,pipe-threads,supply-voltages}.test.ts',
      'tests/mutation/some-questions.test.ts',
    ],
    // Seconds over whole shops, for rules that are tested by themselves as well.
    exclude: ['tests/electron/fit-check/{fit-records,read-history,records-leave-verdicts}.test.ts'],
    setupFiles: ['tests/fixed-seed.ts'],
  },
})
