import { describe, expect, test } from 'vitest';
import { buildChecklist } from './build.ts';
import { holdPointRules } from './guards.ts';
import { heldBy } from './holdPoints.ts';
import { isWeaker, mayLeaveOut, mayReword, ruleFault, templatesOf, type CompanyChecklist, type OwnStep, type WantedChange } from './ownRules.ts';
import { site } from './sites.test-d.ts';
import { itemTemplate, itemTemplates } from './templates.ts';
import { groupText, itemText } from './wordings.ts';

const stamp = { by: 'R. Owner', at: '2026-11-20T12:00:00Z' };
const change = (item: string, more: Partial<WantedChange> = {}): WantedChange => ({ item, leftOut: false, what: '', adds: '', photos: null, why: '', ...more });
const rules = (changes: readonly WantedChange[], own: readonly OwnStep[] = []): CompanyChecklist => ({ changes: changes.map((one) => ({ ...one, ...stamp })), own: [...own] });
const silt: OwnStep = { id: 'C.silt1', applies: 'digging', what: 'Silt sock at the curb inlet', acceptance: 'No brown water in the street', photo: 'Sock and inlet', photos: 1, whyCrew: 'A fine is ours', whyHome: '' };
const built = (company: CompanyChecklist) => buildChecklist(site('tern-hollow'), templatesOf(company));
/** The requirement of a step of the list, with the template that it stands for. */
function asked(items: Awaited<ReturnType<typeof built>>, template: string) {
  const found = items.find((item) => item.template === template);
  if (found === undefined) throw new Error(`the list has no ${template}`);
  return found;
}
const proofs = [...new Set(holdPointRules.flatMap(({ items }) => items))];

describe("a company's rules of the checklist", () => {
  test('leave out no step that proves a hold point or waits for one', () => {
    const guards = holdPointRules.flatMap(({ guards: all }) => all).filter((id) => id !== 'handover');
    for (const id of [...proofs, ...guards]) {
      expect(mayLeaveOut(id), id).toBe(false);
      expect(ruleFault({ changes: [change(id, { leftOut: true, why: 'It takes too long' })], own: [] }), id).toEqual({ item: id, fault: 'leavesOutHoldPoint' });
      // Nor does one that came into the settings some other way.
      expect(templatesOf(rules([change(id, { leftOut: true })])).map((template) => template.id), id).toContain(id);
    }
  });

  test('name no proof of a hold point otherwise, and take photos from it only with a reason', () => {
    for (const id of proofs) {
      const { minPhotos } = itemTemplate(id);
      expect(mayReword(id), id).toBe(false);
      expect(ruleFault({ changes: [change(id, { what: 'Looked at it' })], own: [] })?.fault, id).toBe('rewordsHoldPoint');
      if (minPhotos === 0) continue;
      const fewer = change(id, { photos: minPhotos - 1 });
      expect([isWeaker(fewer), ruleFault({ changes: [fewer], own: [] })?.fault], id).toEqual([true, 'weakerWithoutReason']);
      expect(ruleFault({ changes: [{ ...fewer, why: 'One wide photo shows both ends' }], own: [] }), id).toBeNull();
    }
  });

  test('say who asked for fewer photos, and why, in the requirement that the crew reads', async () => {
    const items = await built(rules([change('D4', { photos: 1, why: 'One wide photo shows both ends' })]));
    const taped = items.find(({ template }) => template === 'D4');
    expect([taped?.requirement.minPhotos, taped?.requirement.params]).toEqual([1, { ...itemTemplate('D4').params, weaker: 'One wide photo shows both ends', weakerBy: 'R. Owner', builtInPhotos: 2 }]);
    // The pour still waits for it.
    const states = items.map(({ key, template, part }) => ({ key, template, part, state: 'open' as const, freshUntil: null }));
    const pour = items.find(({ template }) => template === 'I3');
    expect(heldBy(states, pour?.key ?? '', { at: null, mayDig: true }).find(({ holdPoint }) => holdPoint === 'HP-13')?.items).toContain(taped?.key);
  });

  test('leave out, reword and ask for more photos elsewhere', async () => {
    const items = await built(rules([change('B7', { leftOut: true }), change('I6', { what: 'Run the sprinklers', adds: 'Twice', photos: 2 })]));
    expect(items.some(({ template }) => template === 'B7')).toBe(false);
    const garden = asked(items, 'I6');
    expect(garden.requirement).toMatchObject({ minPhotos: 2, params: { ownWhat: 'Run the sprinklers', ownAdds: 'Twice' } });
    expect(itemText(garden.requirement, 'what')).toBe('checklists.own.what');
    expect(itemText(garden.requirement, 'acceptance')).toBe('checklists.I6.acceptance');
  });

  test('add a step that stands last in its stage and asks for what it says', async () => {
    const items = await built(rules([], [silt]));
    const own = asked(items, 'C.silt1');
    expect(own).toMatchObject({ group: 'C', holdPoint: null, guards: [], part: null, requirement: { minPhotos: 1, evidence: ['tick', 'photo'], signers: ['crewLead'] } });
    expect(items[own.position + 1]?.group).not.toBe('C');
    expect(['what', 'acceptance', 'photo', 'whyCrew', 'whyHome'].map((sentence) => itemText(own.requirement, sentence as 'what'))).toEqual(
      ['checklists.own.what', 'checklists.own.acceptance', 'checklists.own.photo', 'checklists.own.whyCrew', 'checklists.own.no.whyHome'],
    );
    expect(groupText('C', items.map(({ template }) => template))).toBe(groupText('C', itemTemplates.map(({ id }) => id)));
    // For jobs without digging it is not asked.
    expect(await built(rules([], [{ ...silt, applies: 'areaDrain' }]))).toHaveLength((await built(rules([]))).length);
  });

  test('that change nothing ask for exactly what is built in', async () => {
    const usual = await buildChecklist(site('tern-hollow'));
    expect((await built(rules([]))).map(({ key, requirementHash }) => [key, requirementHash])).toEqual(usual.map(({ key, requirementHash }) => [key, requirementHash]));
  });

  test('of an unknown step, or of one twice, are refused', () => {
    expect(ruleFault({ changes: [change('Z9')], own: [] })).toEqual({ item: 'Z9', fault: 'unknown' });
    expect(ruleFault({ changes: [change('A6'), change('A6')], own: [] })).toEqual({ item: 'A6', fault: 'twice' });
    expect(ruleFault({ changes: [], own: [silt, silt] })).toEqual({ item: 'C.silt1', fault: 'twice' });
  });
});

describe('limits of a step', () => {
  const limits = (id: string, share: number, why = '') => change(id, { limits: share, why });
  test('are made stricter freely, and wider at a hold point only with a reason', () => {
    expect(ruleFault({ changes: [limits('E1', 0.5)], own: [] })).toBeNull();
    expect(ruleFault({ changes: [limits('E1', 1.5)], own: [] })).toEqual({ item: 'E1', fault: 'weakerWithoutReason' });
    expect(ruleFault({ changes: [limits('E1', 1.5, 'Long runs of soft pipe')], own: [] })).toBeNull();
    expect(ruleFault({ changes: [limits('C1', 1.5)], own: [] })).toBeNull();
  });
  test('move to both sides of the design, and where there is one alone, that one', async () => {
    const [usual, strict] = [await buildChecklist(site('tern-hollow')), await built(rules([limits('F7', 0.5), limits('E5', 0.5), limits('C1', 2), limits('D2', 2, 'Old slab is uneven')]))];
    const measure = (items: typeof usual, id: string, name: string) => asked(items, id).requirement.measures.find((one) => one.name === name);
    const on = measure(usual, 'F7', 'onLevel');
    expect(measure(strict, 'F7', 'onLevel')).toMatchObject({ target: on?.target, min: expect.closeTo((on?.target ?? 0) - 0.00635, 9), max: expect.closeTo((on?.target ?? 0) + 0.00635, 9) });
    expect(measure(strict, 'F7', 'floatClearance')?.min).toBeCloseTo(6 * 0.0254, 9);
    expect([measure(strict, 'E5', 'drop')?.max, measure(strict, 'E5', 'held')?.min]).toEqual([expect.closeTo(0.00635, 9), 1800]);
    expect(measure(strict, 'C1', 'overcut')?.max).toBeCloseTo(0.0508, 9);
    expect(asked(strict, 'D2').requirement.params).toMatchObject({ ownLimits: 2, weaker: 'Old slab is uneven', weakerBy: 'R. Owner' });
    expect(asked(strict, 'F7').requirement.params).not.toHaveProperty('weaker');
  });
});

describe('what keeps people from harm', () => {
  const rule = { leftOut: true, what: '', adds: '', photos: null, why: '' };
  test.each(['A1', 'A3', 'B7', 'B8', 'H2', 'H3'])('%s is left out only with a reason', (item) => {
    expect(ruleFault({ changes: [{ ...rule, item }], own: [] })).toEqual({ item, fault: 'weakerWithoutReason' });
    expect(ruleFault({ changes: [{ ...rule, item, why: 'Our electrician does it and signs' }], own: [] })).toBeNull();
  });
  test('other steps need none', () => expect(ruleFault({ changes: [{ ...rule, item: 'F8' }], own: [] })).toBeNull());
});

describe("the label of the company's cement", () => {
  const cure = { product: 'Blue can', warm: 900, cool: 600, cold: 7200 };
  const label = { item: 'G1', leftOut: false, what: '', adds: '', photos: null, cure, why: 'Label of the can, table for 2 in' };
  test('needs a reason with a name, and stands where the built-in table stood, at riser and line alike', async () => {
    expect(ruleFault({ changes: [{ ...label, why: '' }], own: [] })?.fault).toBe('weakerWithoutReason');
    const items = await buildChecklist(site('tern-hollow'), templatesOf({ changes: [{ ...label, by: 'Ines Calloway', at: '2026-03-02T10:00:00Z' }], own: [] }));
    for (const template of ['F4', 'G1']) {
      const asked = items.find((item) => item.template === template)?.requirement;
      // Colder air never cures faster, whatever was typed.
      expect(asked?.cure, template).toEqual([{ from: 60, wait: 900 }, { from: 40, wait: 900 }, { from: 0, wait: 7200 }]);
      expect(asked?.params, template).toMatchObject({ ownCement: 'Blue can', weakerBy: 'Ines Calloway' });
    }
  });
  test('says nothing of a step where nothing is glued', async () => {
    const items = await buildChecklist(site('tern-hollow'), templatesOf({ changes: [{ ...label, item: 'E2', by: 'A', at: '2026-03-02T10:00:00Z' }], own: [] }));
    expect(items.find(({ template }) => template === 'F4')?.requirement.params.ownCement).toBeUndefined();
  });
});
