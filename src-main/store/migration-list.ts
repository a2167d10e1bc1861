import { migration as firstTables } from '../../migrations/0010-first-tables.ts'
import { migration as priceLists } from '../../migrations/0020-price-lists.ts'
import { migration as quotesAndWhatFollows } from '../../migrations/0030-quotes-and-what-follows.ts'
import type { Step } from './migration.ts'

/**
 * Every step there is, in order, each with the SHA-256 of its file's text (line ends as \n). A test holds text and hash
 * together, and a data file that was made by other text is refused.
 */
export const migrationList: readonly Step[] = [
  { ...firstTables, hash: 'a2d48c36b7b72d1252554a7dad45794776811576873c6c2c020491e7d89f69d8' },
  { ...priceLists, hash: '25282bef504012138e92fbc91dd5dff79363e7027d3fcf1669365e54adeb30c2' },
  { ...quotesAndWhatFollows, hash: '66e5a7cd9a88cd04a749efb10bc060d27796ee40b448923ff5b3ee46fc23f758' },
]
