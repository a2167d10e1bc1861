import { describe, expect, it } from 'vitest'
import { deliveredSettings } from '../../../../src-main/desk/figures-in-force.ts'
import { cautionRules } from '../../../../src-main/engine/cautions/caution-list.ts'
import type { CautionRule } from '../../../../src-main/engine/cautions/caution-rule.ts'
import { taskRules } from '../../../../src-main/engine/labour/task-list.ts'
import type { TaskRule } from '../../../../src-main/engine/labour/task-rule.ts'
import type { Per } from '../../../../src-main/engine/takeoff/asks.ts'
import { rules } from '../../../../src-main/engine/takeoff/rule-list.ts'
import { named } from '../../../../src-main/engine/takeoff/rule.ts'
import type { Rule } from '../../../../src-main/engine/takeoff/rule.ts'
import { toolRules } from '../../../../src-main/engine/tools/tool-list.ts'
import type { ToolRule } from '../../../../src-main/engine/tools/tool-rule.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { typical } from '../../../typical-asks.ts'

const figures = defaultFigures('2026-11-25')
const settingIds = new Set(deliveredSettings.map((setting) => setting.id))
const fullAsk = <P extends Per>(per: P, over: object) => ({ ...typical[per], ...over })

describe('each take-off rule does what its examples say', () => {
  for (const rule of rules as readonly Rule[]) {
    for (const example of rule.examples) {
      it(`${rule.id}: ${example.says}`, () => {
        const needs = rule.gives(fullAsk(rule.per, example.ask), named(figures, rule.uses))
        expect(needs.map((need) => need.kind)).toEqual(example.gives.map(([kind]) => kind))
        for (const [index, [, quantity]] of example.gives.entries()) {
          expect(needs[index]?.quantity).toBeCloseTo(quantity, 3)
        }
      })
    }
  }
})

describe('each labour task rule does what its examples say', () => {
  for (const rule of taskRules as readonly TaskRule[]) {
    for (const example of rule.examples) {
      it(`${rule.id}: ${example.says}`, () => {
        const works = rule.gives(fullAsk(rule.per, example.ask), named(figures, rule.uses))
        expect(works.map(({ taskId, count }) => [taskId, count])).toEqual(example.gives)
      })
    }
  }
})

describe('each caution appears when, and only when, it should', () => {
  for (const rule of cautionRules as readonly CautionRule[]) {
    for (const example of rule.examples) {
      it(`${rule.id}: ${example.says}`, () => {
        const because = rule.when(fullAsk(rule.per, example.ask), named(figures, rule.uses))
        expect(because !== null).toBe(example.appears)
      })
    }
  }
})

describe('each tool rule does what its examples say', () => {
  for (const rule of toolRules as readonly ToolRule[]) {
    for (const example of rule.examples) {
      it(`${rule.id}: ${example.says}`, () => {
        const tools = rule.gives(fullAsk(rule.per, example.ask), named(figures, rule.uses))
        expect(tools.map((tool) => tool.name)).toEqual(example.gives)
      })
    }
  }
})

describe('every rule says where it comes from', () => {
  const all = [...rules, ...taskRules, ...cautionRules, ...toolRules] as readonly Pick<
    Rule,
    'id' | 'source' | 'says' | 'uses' | 'examples'
  >[]
  it.each(all.map((rule) => [rule.id, rule] as const))(
    '%s has a source, examples and known settings',
    (_, rule) => {
      expect(rule.source.length).toBeGreaterThan(5)
      expect(rule.says.length).toBeGreaterThan(5)
      expect(rule.examples.length).toBeGreaterThanOrEqual(2)
      for (const id of rule.uses) expect(settingIds).toContain(id)
    },
  )

  it('no two rules of a kind share an id', () => {
    for (const list of [rules, taskRules, cautionRules, toolRules]) {
      const ids = list.map((rule) => rule.id)
      expect(new Set(ids).size).toBe(ids.length)
    }
  })

  it('a rule that may be silent has an example of it, and one that fires', () => {
    for (const rule of rules) expect(rule.examples.some((example) => example.gives.length > 0)).toBe(true)
  })

  it('a rule gets no setting that it does not name', () => {
    expect(() => named(figures, []).value('seal.tapeTurnsCount')).toThrow('does not name')
  })
})
