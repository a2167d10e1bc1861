import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/**
 * What axe finds on the page as it stands, in one line each: every rule with the light screen, then with the dark one the
 * rules about colour, since nothing else differs between the two. The PDF viewer inside a frame is the browser's own.
 */
export async function found(page: Page): Promise<readonly string[]> {
  return [
    ...(await foundIn(page, 'light', (axe) => axe)),
    ...(await foundIn(page, 'dark', (axe) => axe.withRules(['color-contrast', 'link-in-text-block']))),
  ]
}

async function foundIn(
  page: Page,
  scheme: 'light' | 'dark',
  choose: (axe: AxeBuilder) => AxeBuilder,
): Promise<readonly string[]> {
  await page.emulateMedia({ colorScheme: scheme })
  await page.locator(`html[data-mantine-color-scheme="${scheme}"]`).waitFor()
  const axe = choose(new AxeBuilder({ page }).exclude('iframe').setLegacyMode())
  const { violations, passes } = await axe.analyze()
  const checked = passes.map(({ id }) => id)
  expect(checked).toContain('color-contrast')
  if (scheme === 'light') expect(checked.length).toBeGreaterThan(10)
  return violations.map(
    ({ id, nodes }) => `${scheme}, ${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`,
  )
}
