import fc from 'fast-check'

// A mutant meets each property hundreds of times over the whole hunt: fewer cases each time.
fc.configureGlobal({ numRuns: 25 })
