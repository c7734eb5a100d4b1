import path from 'node:path'
import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'

const slow = [
  'some-questions',
  'choose-asked-readings',
  'choose-greedily',
  'hint-from-sisters',
  'find-families',
]

/** The first test that notices a mutant ends its run, so those that take milliseconds go first. */
class SlowLast extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const isSlow = ({ moduleId }: TestSpecification) => slow.some(name => moduleId.includes(`/${name}.`))
    return [...files.filter(file => !isSlow(file)), ...files.filter(isSlow)]
  }
}

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
    // A worker a file would take most of the time; no test leaves anything behind.
    isolate: false,
    // A busy machine is slow; what never ends is stopped by the mutation tester itself.
    testTimeout: 60_000,
    sequence: { sequencer: SlowLast },
    setupFiles: ['tests/fixed-seed.ts'],
  },
})
