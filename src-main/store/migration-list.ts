import { migration as firstTables } from '../../migrations/0010-first-tables.ts'
import type { Step } from './migration.ts'

/**
 * Every step there is, in order, each with the SHA-256 of its file's text (line ends as \n). A test holds text and hash
 * together, and a data file that was made by other text is refused.
 */
export const migrationList: readonly Step[] = [
  { ...firstTables, hash: 'a2d48c36b7b72d1252554a7dad45794776811576873c6c2c020491e7d89f69d8' },
]
