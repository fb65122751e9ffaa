import { describe, expect, test } from 'vitest';
import { buildChecklist } from './build.ts';
import { fixedFigures, type OwnFigure } from './ownFigures.ts';
import { isWeaker, ruleFault, templatesOf, type WantedChange } from './ownRules.ts';
import { site } from './sites.test-d.ts';
import { itemTemplates } from './templates.ts';

const inch = 0.0254;
const change = (item: string, figures: OwnFigure[], why = ''): WantedChange => ({ item, leftOut: false, what: '', adds: '', photos: null, figures, why });
const fault = (one: WantedChange) => ruleFault({ changes: [one], own: [] })?.fault ?? null;
const asked = async (one: WantedChange, template: string, name: string) => {
  const items = await buildChecklist(site('tern-hollow'), templatesOf({ changes: [{ ...one, by: 'R. Owner', at: '2026-03-02T10:00:00Z' }], own: [] }));
  const requirement = items.find((item) => item.template === template)?.requirement;
  return { measure: requirement?.measures.find((measure) => measure.name === name), weaker: requirement?.params.weaker };
};

describe('the figures of a step that are the same on every job', () => {
  test('are those that no design has a say in, and every list asks for them with these limits', async () => {
    expect(fixedFigures('C1').map(({ name }) => name)).toEqual(['sawLine', 'overcut']);
    // Levels of the basin, the size of a collar and lines that are checked come from the design.
    expect(['A5', 'C3', 'E1', 'F2', 'F7', 'J1'].flatMap((id) => fixedFigures(id))).toEqual([]);
    const items = await buildChecklist(site('tern-hollow'));
    const known = itemTemplates.flatMap(({ id }) => fixedFigures(id).map((measure) => ({ id, measure })));
    expect(known.length).toBeGreaterThan(15);
    for (const { id, measure } of known) for (const item of items.filter(({ template }) => template === id)) expect(item.requirement.measures, id).toContainEqual(measure);
  });
});

describe('a limit of the company\'s own', () => {
  test('is stricter freely, and wider at the proof of a hold point only with a reason', async () => {
    // B2 opens HP-2: three check shots within 1/8 in.
    const stricter = change('B2', [{ measure: 'check1', min: -inch / 16, max: inch / 16 }]);
    const wider = change('B2', [{ measure: 'check1', min: null, max: inch / 4 }]);
    expect([isWeaker(stricter), fault(stricter), isWeaker(wider), fault(wider)]).toEqual([false, null, true, 'weakerWithoutReason']);
    expect(fault({ ...wider, why: 'Our rods are read to a quarter' })).toBeNull();
    expect(await asked(stricter, 'B2', 'check1')).toMatchObject({ measure: { min: -inch / 16, max: inch / 16 }, weaker: undefined });
    expect((await asked(stricter, 'B2', 'check2')).measure).toMatchObject({ min: -inch / 8, max: inch / 8 });
    expect(await asked({ ...wider, why: 'Our rods are read to a quarter' }, 'B2', 'check1')).toMatchObject({ measure: { min: -inch / 8, max: inch / 4 }, weaker: 'Our rods are read to a quarter' });
  });
  test('keeps what is expected between its sides', async () => {
    // J2: five starts; the company asks for eight.
    expect((await asked(change('J2', [{ measure: 'starts', min: 8, max: null }]), 'J2', 'starts')).measure).toMatchObject({ min: 8, target: 8, max: null });
  });
  test('is refused where the figure has no such side, or nothing would lie between', () => {
    expect(fault(change('C1', [{ measure: 'overcut', min: 0.01, max: null }]))).toBe('limitUnfit');
    expect(fault(change('C1', [{ measure: 'sawLine', min: 0.01, max: 0.005 }]))).toBe('limitUnfit');
    expect(fault(change('F7', [{ measure: 'onLevel', min: null, max: 1 }]))).toBe('limitUnfit');
  });
});
