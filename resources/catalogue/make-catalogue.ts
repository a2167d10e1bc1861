import { writeFileSync } from 'node:fs'
import { catalogueFiles } from './catalogue-files.ts'

/** Writes the generic catalogue beside this file: `node resources/catalogue/make-catalogue.ts`. */
for (const [name, text] of Object.entries(catalogueFiles())) {
  writeFileSync(new URL(name, import.meta.url), text)
  process.stdout.write(`${name}: ${text.length} characters\n`)
}
