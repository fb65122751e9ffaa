import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';

const standard = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** Faults of WCAG 2.2 A and AA that a program can find on the page as it stands, each with its place. */
export async function faultsOf(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(standard).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${failureSummary ?? ''}`));
}
