import path from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vitest/config'

const root = path.join(import.meta.dirname, '..')
/** Real browsers and whole programs: one file at a time, so that two cores serve one page. */
const whole = ['tests/journeys/**/*.test.ts', 'tests/hosts/**/*.test.ts']

export default defineConfig({
  root,
  plugins: [react()],
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'rules',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: whole,
          setupFiles: ['tests/fixed-seed.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'whole',
          environment: 'node',
          include: whole,
          globalSetup: ['tests/build-when-stale.ts'],
          fileParallelism: false,
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
})
