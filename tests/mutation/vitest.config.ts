import { join } from 'node:path'
import { defineConfig } from 'vitest/config'

// oxlint-disable-next-line import/no-default-export -- the runner asks for one
export default defineConfig({
  root: join(import.meta.dirname, '../..'),
  test: {
    include: [
      'tests/unit/engine/**/*.test.ts',
      'tests/property/**/*.test.ts',
      'tests/reference/**/*.test.ts',
    ],
    setupFiles: ['tests/mutation/fewer-runs.ts'],
    isolate: false,
    testTimeout: 60_000,
  },
})
