import { readFileSync } from 'node:fs';
import { buildChecklist, type BuiltItem, canonicalBytes, DesignDocumentSchema, rulesVersion } from '@yardfall/contracts';
import { describe, expect, it } from 'vitest';
import { type EarlierStep, inEarlierForm } from './forms.rules.ts';

const document = DesignDocumentSchema.parse(JSON.parse(readFileSync(new URL('../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')));
const built = await buildChecklist(document);
const then = new Map(built.map(({ key, requirementHash }) => [key, requirementHash]));
const find = (items: readonly BuiltItem[], key: string) => items.find((item) => item.key === key);

/** As the first rules wrote it: without a number, and one photo for whatever there is. */
function earlier(item: BuiltItem, begun: boolean, more: Partial<EarlierStep> = {}): EarlierStep {
  const { rules: _, ...rest } = item.requirement;
  const requirement = { ...rest, minPhotos: Math.min(item.requirement.minPhotos, 1) };
  return { key: item.key, template: item.template, part: item.part, holdPoint: item.holdPoint, begun, requirement, requirementBytes: canonicalBytes(requirement), requirementHash: `old ${item.key}`, ...more };
}

describe('the list of a job in the ground that is built anew by later rules', () => {
  it('asks what was begun as it was asked, and the rest by the present rules', () => {
    const list = inEarlierForm(built, built.map((item) => earlier(item, ['B2', 'E1:P1'].includes(item.key))), then);
    expect(list.map(({ key }) => key)).toEqual(built.map(({ key }) => key));
    expect(list.filter(({ requirementHash }) => requirementHash.startsWith('old')).map(({ key }) => key)).toEqual(['B2', 'E1:P1']);
    expect(find(list, 'B1')?.requirement.rules).toBe(rulesVersion);
  });
  it('asks anew what the design itself has changed', () => {
    const list = inEarlierForm(built, built.map((item) => earlier(item, true)), new Map([...then, ['E1:P1', 'another fall']]));
    expect(list.filter(({ requirementHash }) => !requirementHash.startsWith('old')).map(({ key }) => key)).toEqual(['E1:P1']);
  });
  it('keeps a step that was begun for the whole job where it is divided now, and adds only what is new', () => {
    const [roof] = built.filter(({ template }) => template === 'G5');
    if (roof === undefined) throw new Error('no G5');
    const whole = earlier(roof, true, { key: 'G5', part: null, requirement: { ...roof.requirement, rules: undefined, measures: [] } });
    expect(inEarlierForm(built, [whole], then).filter(({ template }) => template === 'G5').map(({ key, requirementHash }) => [key, requirementHash])).toEqual([['G5', `old ${roof.key}`]]);
    expect(inEarlierForm(built, [{ ...whole, begun: false }], then).filter(({ template }) => template === 'G5').map(({ key }) => key)).toEqual(['G5:O1', 'G5:O2']);
    const onePart = earlier(roof, true, { key: 'G5:gone', part: 'O1' });
    expect(inEarlierForm(built, [onePart], then).filter(({ template }) => template === 'G5').map(({ key }) => key)).toEqual(['G5:gone', 'G5:O2']);
  });
  it('does nothing to a list of the present rules', () => {
    const present = built.map((item): EarlierStep => ({ ...earlier(item, true), requirement: item.requirement }));
    expect(inEarlierForm(built, present, then)).toEqual(built);
  });
});
