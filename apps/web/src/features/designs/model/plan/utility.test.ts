import { readFileSync } from 'node:fs';
import { planChecks, type DesignDocument, type PlanShape } from '@yardfall/calc';
import { applyOperations, DesignDocumentSchema } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import { addShape, changeUtility, utilityFrom } from './operations.ts';

const site = DesignDocumentSchema.parse(JSON.parse(readFileSync(new URL('../../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')));

/** A short run that is drawn one foot beside the middle of the discharge line's longest side. */
function besideDischarge(document: DesignDocument): PlanShape {
  const points = document.site.plan?.shapes.find(({ use, of }) => use === 'pipe' && of === 'N1')?.points ?? [];
  const sides = points.slice(1).map((to, at) => ({ from: points[at] ?? to, to }));
  const lengthOf = ({ from, to }: (typeof sides)[number]) => Math.hypot(to.x - from.x, to.y - from.y);
  const [longest] = [...sides].sort((a, b) => lengthOf(b) - lengthOf(a));
  if (longest === undefined) throw new Error('the demo yard has no discharge line on its plan');
  const { from, to } = longest;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const away = 0.3048 / lengthOf(longest);
  const beside = (share: number) => ({ x: from.x + share * dx - dy * away, y: from.y + share * dy + dx * away });
  return { id: 'ZU1', kind: 'line', use: 'utility', name: 'Gas to the grill', of: null, points: [beside(0.45), beside(0.55)] };
}

describe('a run of the plan that is a buried line', () => {
  const shape = besideDischarge(site);
  const drawn = applyOperations(site, addShape(site, shape));
  const near = (document: DesignDocument) => planChecks(document).filter(({ shapes }) => shapes.includes('ZU1')).map(({ code }) => code);

  test('is only a line until it is said to be one: then its strip counts', () => {
    expect(near(drawn)).toEqual([]);
    const marked = applyOperations(drawn, utilityFrom(drawn, shape, 0.6096));
    expect(near(marked)).toContain('plan.inToleranceStrip');
    const made = marked.site.utilities.at(-1);
    expect(made).toMatchObject({ kind: 'private', name: 'Gas to the grill', tolerance: 0.6096 });
    expect(marked.site.plan?.shapes.find(({ id }) => id === 'ZU1')?.of).toBe(made?.id);
    expect(DesignDocumentSchema.safeParse(marked).success).toBe(true);
  });

  test('with a narrower strip the run a foot beside it is clear', () => {
    const marked = applyOperations(drawn, utilityFrom(drawn, shape, 0.6096));
    const id = marked.site.utilities.at(-1)?.id ?? '';
    expect(near(applyOperations(marked, changeUtility(id, 'tolerance', 0.25)))).toEqual([]);
    expect(applyOperations(marked, changeUtility(id, 'kind', 'gas')).site.utilities.at(-1)?.kind).toBe('gas');
  });
});
