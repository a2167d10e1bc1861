// Writes the lists of rules from the rule files themselves: `npm run rules`. With --check it only says which list is stale.
import { readFileSync, readdirSync, writeFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'

const here = join(dirname(fileURLToPath(import.meta.url)), '../../engine')
const lists = [
  {
    file: 'takeoff/rule-list.ts',
    folder: 'takeoff/rules',
    constant: 'rules',
    type: 'AnyRule',
    from: './rule.ts',
  },
  {
    file: 'labour/task-list.ts',
    folder: 'labour/tasks',
    constant: 'taskRules',
    type: 'AnyTaskRule',
    from: './task-rule.ts',
  },
  {
    file: 'cautions/caution-list.ts',
    folder: 'cautions/rules',
    constant: 'cautionRules',
    type: 'AnyCautionRule',
    from: './caution-rule.ts',
  },
  {
    file: 'tools/tool-list.ts',
    folder: 'tools/rules',
    constant: 'toolRules',
    type: 'AnyToolRule',
    from: './tool-rule.ts',
  },
]

function listText({ file, folder, constant, type, from }) {
  const names = readdirSync(join(here, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .toSorted()
  const found = names.map((name) => {
    const path = join(here, folder, name)
    const exported = /^export const (\w+)/m.exec(readFileSync(path, 'utf8'))?.[1]
    if (exported === undefined) throw new Error(`${path} exports no rule`)
    return { exported, path: `./${relative(join(here, dirname(file)), path).replaceAll('\\', '/')}` }
  })
  const imports = found.map(({ exported, path }) => `import { ${exported} } from '${path}'`).join('\n')
  const entries = found.map(({ exported }) => `  ${exported},`).join('\n')
  return `// Generated from the files beside it by \`npm run rules\`.\n${imports}\nimport type { ${type} } from '${from}'\n\nexport const ${constant}: readonly ${type}[] = [\n${entries}\n]\n`
}

const checking = process.argv.includes('--check')
for (const list of lists) {
  const path = join(here, list.file)
  const text = listText(list)
  if (!checking) writeFileSync(path, text)
  else if (readFileSync(path, 'utf8') !== text) {
    console.error(`${list.file} is stale: run npm run rules`)
    process.exitCode = 1
  }
}
