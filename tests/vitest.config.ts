import { join } from 'node:path'
import { defineConfig } from 'vitest/config'
import { closingLine } from './closing-line.ts'

const top = join(import.meta.dirname, '..')

/** What computes and prints: nothing that one file of tests does is felt by the next, so they share workers. */
const together = [
  'tests/unit/{contract,documents,domain,engine,renderer,resources}/**/*.test.{ts,tsx}',
  'tests/property/*.test.ts',
  'tests/property/heat/*.test.ts',
  'tests/reference/**/*.test.ts',
  'tests/documents/**/*.test.ts',
  'tests/shape/**/*.test.ts',
]

const each = { testTimeout: 60_000, hookTimeout: 60_000 }

// oxlint-disable-next-line import/no-default-export -- the runner asks for one
export default defineConfig({
  root: top,
  test: {
    globalSetup: ['tests/built.ts'],
    reporters: ['default', closingLine()],
    // Several files at once, but each may start a browser or a program of its own.
    maxWorkers: 2,
    allowOnly: false,
    passWithNoTests: false,
    projects: [
      {
        root: top,
        test: { ...each, name: 'alone', include: ['tests/**/*.test.{ts,tsx}'], exclude: together },
      },
      { root: top, test: { ...each, name: 'together', include: together, isolate: false } },
    ],
  },
})
