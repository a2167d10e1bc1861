import { join } from 'node:path'
import { defineConfig } from 'vitest/config'
import { closingLine } from './closing-line.ts'

const top = join(import.meta.dirname, '..')

// oxlint-disable-next-line import/no-default-export -- the runner asks for one
export default defineConfig({
  root: top,
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    globalSetup: ['tests/built.ts'],
    reporters: ['default', closingLine()],
    // Several files at once, but each may start a browser or a program of its own.
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    allowOnly: false,
    passWithNoTests: false,
  },
})
