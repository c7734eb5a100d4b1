import AxeBuilder from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/** No violation of WCAG 2.2 A and AA, nor of axe's own good practice, in what the page now shows. */
export async function checkAccessibility(page: Page): Promise<void> {
  const { violations, passes } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze()
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`),
  ).toEqual([])
  // A page that axe could not read at all has no violations either.
  expect(passes.length).toBeGreaterThan(15)
}
