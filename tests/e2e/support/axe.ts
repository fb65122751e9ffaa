import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';

const standard = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
/** What can differ on a phone from the same page at a desk. */
const onlyOfSize = ['target-size', 'scrollable-region-focusable', 'select-name', 'button-name', 'link-name', 'label'];

interface Where {
  /** Only what stands in this part of the page. */
  readonly within?: string;
  /** `size`: what a phone can change. `structure`: everything but contrast, which is known from the tokens and the first pages and takes longest on drawings. */
  readonly only?: 'size' | 'structure';
}

/** Faults of WCAG 2.2 A and AA that a program can find on the page as it stands, each with its place. */
export async function faultsOf(page: Page, { within, only }: Where = {}): Promise<string[]> {
  const all = new AxeBuilder({ page });
  const part = within === undefined ? all : all.include(within);
  const asked = only === 'size' ? part.withRules(onlyOfSize) : part.withTags(standard);
  const { violations } = await (only === 'structure' ? asked.disableRules(['color-contrast']) : asked).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${failureSummary ?? ''}`));
}
