import type { Reporter, TestCase, TestModule } from 'vitest/node'

/**
 * Ends a run with one line, `Tests: N passed, N failed`, after the reasons of whatever was skipped. A file or a setting-up
 * that broke counts as failed, and so does a test that was skipped without a reason: none of them may pass for nothing.
 */
export function closingLine(): Reporter {
  return {
    onTestRunEnd(modules, unhandled) {
      const tests = modules.flatMap((module) => [...module.children.allTests()])
      const skipped = tests.filter((test) => test.result().state === 'skipped')
      const unexplained = skipped.filter((test) => reasonOf(test) === null)
      for (const test of skipped) {
        console.log(
          `Skipped: ${test.fullName}: ${reasonOf(test) ?? 'no reason is given, so it counts as failed'}`,
        )
      }
      const passed = tests.filter((test) => test.result().state === 'passed').length
      const pending = tests.filter((test) => test.result().state === 'pending').length
      const broken = modules.flatMap((module) => brokenIn(module)).length + unhandled.length
      const failed = tests.filter((test) => test.result().state === 'failed').length + pending + broken
      const explained = skipped.length - unexplained.length
      const tail = explained > 0 ? `, ${explained} skipped` : ''
      if (failed + unexplained.length > 0 || tests.length === 0) process.exitCode = 1
      console.log(`\nTests: ${passed} passed, ${failed + unexplained.length} failed${tail}`)
    },
  }
}

function reasonOf(test: TestCase): string | null {
  const result = test.result()
  return result.state === 'skipped' ? (result.note ?? null) : null
}

/** Errors that belong to no test: a file that could not be loaded, a beforeAll that threw. */
function brokenIn(module: TestModule): readonly unknown[] {
  const suites = [...module.children.allSuites()]
  return [...module.errors(), ...suites.flatMap((suite) => suite.errors())]
}
