import { describe, expect, test } from 'vitest';
import { FoundKind } from '../found.ts';
import { buildChecklist } from './build.ts';
import { site } from './sites.test-d.ts';
import { isStopped } from './stopped.ts';

const steps = await buildChecklist(site('tern-hollow'));
const stopped = (kind: (typeof FoundKind.options)[number], part: string | null) => steps.filter((step) => isStopped({ kind, part }, step)).map(({ key }) => key);

// What a finding stops is common practice, no source: what was found decides whether that work can go on as drawn.
describe('what was found', () => {
  test('at a part stops the steps of that part and no other', () => {
    const keys = stopped('soil', 'P1');
    expect(keys).toEqual(expect.arrayContaining(['E1:P1', 'C4', 'E2']));
    expect(keys.every((key) => steps.some((step) => step.key === key && (step.part === 'P1' || ['C4', 'E2', 'E3'].includes(key))))).toBe(true);
  });
  test('as a line in the ground stops digging and cutting everywhere, whichever part it was found at', () => {
    expect(stopped('utility', 'P1')).toEqual(expect.arrayContaining(['C4', 'C5', 'E1:P1']));
    expect(stopped('utility', 'P1').filter((key) => key.startsWith('J'))).toEqual([]);
  });
  test('in the slab stops the cut and not the basin', () => {
    expect(stopped('steel', null).map((key) => key.slice(0, 2))).toEqual(expect.arrayContaining(['C1', 'C2']));
    expect(stopped('steel', null).some((key) => key.startsWith('F'))).toBe(false);
  });
  test('without a name or a part stops everything', () => expect(stopped('other', null)).toHaveLength(steps.length));
  test.each(FoundKind.options)('%s stops something when no part is named', (kind) => expect(stopped(kind, null).length).toBeGreaterThan(0));
});
