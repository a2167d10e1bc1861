// oxlint-disable-next-line import/no-default-export -- the tool asks for one
export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/mutation/vitest.config.ts', related: true },
  mutate: ['src-main/engine/**/*.ts', '!src-main/engine/**/*-list.ts'],
  coverageAnalysis: 'perTest',
  // A mutant of what is made once, when a file is loaded, would need every test again.
  ignoreStatic: true,
  concurrency: 2,
  timeoutMS: 10_000,
  tempDirName: 'out/mutation/work',
  incremental: true,
  incrementalFile: 'out/mutation/incremental.json',
  reporters: ['clear-text', 'json'],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false, reportMutants: false },
  jsonReporter: { fileName: 'out/mutation/report.json' },
  // A file that is not there: the tool would rewrite a real one with an interface that this TypeScript no longer has.
  tsconfigFile: 'tests/mutation/none.json',
  disableTypeChecks: false,
}
