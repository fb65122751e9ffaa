import { describe, expect, test } from 'vitest';
import { Requirement } from '../checklists.ts';
import { buildChecklist } from './build.ts';
import { holdPointRules, handoverStep } from './guards.ts';
import { itemGroups } from './types.ts';
import { groupText, itemText } from './wordings.ts';
import { lawn, site } from './sites.test-d.ts';
import { groundLines } from './lines.ts';
import { heldBy, type ItemInState } from './holdPoints.ts';
import { foldItem } from './fold.ts';
import { itemTemplate, itemTemplates } from './templates.ts';

const tern = await buildChecklist(site('tern-hollow'));
const keys = tern.map(({ key }) => key);

describe('the templates', () => {
  test('are the 61 rows of the install sequence, each once', () => {
    expect(itemTemplates.length).toBe(61);
    expect(new Set(itemTemplates.map(({ id }) => id)).size).toBe(61);
  });
  test('carry the hold points that the guards name, and no other', () => {
    const opened = new Map<string, Set<string>>();
    for (const { id, items } of holdPointRules) if (!id.includes(' ')) opened.set(id, new Set(items));
    for (const template of itemTemplates) {
      const inRules = [...opened].filter(([, items]) => items.has(template.id)).map(([id]) => id);
      // A6 is a hold point only where an old drain is cut: its step says so, not its row.
      expect(inRules, template.id).toEqual(template.id === 'A6' ? ['HP-rain'] : template.holdPoint === null ? [] : [template.holdPoint]);
    }
    expect([...opened.keys()]).toEqual([...Array.from({ length: 14 }, (_, i) => `HP-${String(i + 1)}`), 'HP-rain', 'HP-trench', 'HP-cure', 'HP-15']);
  });
  test('are named by every guard', () => {
    const named = holdPointRules.flatMap(({ items, guards }) => [...items, ...guards]).filter((id) => id !== handoverStep);
    expect(named.map((id) => itemTemplate(id).id)).toEqual(named);
  });
  test('ask for a photo where they count one', () => {
    for (const { id, evidence, minPhotos } of itemTemplates) expect(evidence.includes('photo'), id).toBe(minPhotos > 0);
  });
});

describe('the checklist of Tern Hollow', () => {
  test('has about 50 items, each with its own key', () => {
    expect(tern.length).toBeGreaterThanOrEqual(48);
    expect(tern.length).toBeLessThanOrEqual(62);
    expect(new Set(keys).size).toBe(tern.length);
  });
  test('holds the pour by grate tape, forms and re-check of the same channel', () => {
    const pour = tern.filter(({ template }) => template === 'I3');
    expect(pour.map(({ guards }) => guards)).toEqual(pour.map(() => ['HP-5', 'HP-13']));
    for (const { part } of pour) expect(keys).toEqual(expect.arrayContaining(['D4', 'I1', 'I2'].map((id) => `${id}:${String(part)}`)));
  });
  test('takes its limits from the document', () => {
    const basin = site('tern-hollow').system.parts.find((part) => part.kind === 'basin');
    const on = tern.find(({ template }) => template === 'F7')?.requirement.measures.find(({ name }) => name === 'onLevel');
    expect(on?.target).toBe(basin?.onLevel);
    expect((on?.max ?? 0) - (on?.min ?? 0)).toBeCloseTo(0.0254, 9);
  });
  test('counts the collar in bags of 0.6 cubic feet: 28 as designed, 11 for 6.5 cubic feet', async () => {
    const document = site('tern-hollow');
    const parts = document.system.parts.map((part) => (part.kind === 'basin' ? { ...part, collarVolume: 6.5 * 0.3048 ** 3 } : part));
    const bags = (items: typeof tern) => items.find(({ template }) => template === 'F2')?.requirement.measures[0];
    expect(bags(tern)).toMatchObject({ name: 'bags', min: 28 });
    expect(bags(await buildChecklist({ ...document, system: { parts } }))).toMatchObject({ min: 11 });
  });
  test('asks for model and serial of the pump, and shoots each joint of a pipe between its ends', async () => {
    expect(tern.find(({ template }) => template === 'A5')?.requirement).toMatchObject({ evidence: ['tick', 'photo', 'value', 'text'], texts: ['pumpModel', 'pumpSerial'] });
    // 85 ft in sticks of 20 ft: four joints, a fifth of the fall between two of them.
    const pipe = site('ridgeback').system.parts.find((part) => part.kind === 'pipe');
    const shots = (await buildChecklist(site('ridgeback'))).find(({ template }) => template === 'E1')?.requirement;
    expect(shots?.measures.map(({ name }) => name)).toEqual(['invertUp', 'joint:1', 'joint:2', 'joint:3', 'joint:4', 'invertDown', 'slope']);
    const targets = shots?.measures.slice(0, 6).map(({ target }) => target) ?? [];
    for (const [n, target] of targets.entries()) expect(target).toBeCloseTo((pipe?.invertUp ?? 0) - (n * ((pipe?.invertUp ?? 0) - (pipe?.invertDown ?? 0))) / 5, 9);
    expect(shots?.params.length).toBe(pipe?.length);
  });
  test('leaves out what the design does not have', () => {
    expect(keys.filter((key) => /^(D6|G6)/.test(key))).toEqual([]);
  });
  test('has a requirement of the contract under each hash; equal requirements have equal hashes', async () => {
    for (const { requirement } of tern) expect(Requirement.parse(requirement)).toEqual(requirement);
    expect((await buildChecklist(site('tern-hollow'))).map(({ requirementHash }) => requirementHash)).toEqual(tern.map(({ requirementHash }) => requirementHash));
  });
  test('changes the hash of the items that a changed level concerns, and no other', async () => {
    const document = site('tern-hollow');
    const parts = document.system.parts.map((part) => (part.kind === 'basin' ? { ...part, onLevel: part.onLevel + 0.01 } : part));
    const changed = await buildChecklist({ ...document, system: { parts } });
    const differing = changed.filter((item, index) => item.requirementHash !== tern[index]?.requirementHash).map(({ template }) => template);
    expect(differing).toEqual(['F7']);
  });
});

/** What an item says, as the code of its sentence. */
const says = (items: typeof tern, template: string) => items.filter((item) => item.template === template).map(({ requirement }) => itemText(requirement, 'what'));

describe('an item names only what the design has', () => {
  const lawnItems = buildChecklist(lawn());
  const document = site('tern-hollow');
  const only = (...kinds: string[]) => buildChecklist({
    ...document, system: { parts: document.system.parts.filter(({ kind }) => kinds.includes(kind)) }, site: { ...document.site, existingDrains: [] }, construction: { ...document.construction, slabCuts: [], electrical: null },
  });
  test('channel, basin, alarm and the old drain of Tern Hollow', () => {
    expect(['A5', 'A6', 'I7', 'J4', 'J8'].flatMap((id) => says(tern, id))).toEqual(
      ['checklists.A5Both.what', 'checklists.A6OldDrain.what', 'checklists.I7Both.what', 'checklists.J4Grate.what', 'checklists.J8Pump.what']);
  });
  test('inlets of a lawn, with no breaker, alarm or grate to tape', async () => {
    const items = await lawnItems;
    expect(['A5', 'I7', 'J4', 'J8'].flatMap((id) => says(items, id))).toEqual(['checklists.I7.what', 'checklists.J4Inlets.what', 'checklists.J8.what']);
  });
  test('roof leaders alone are tested by the leader', async () => {
    const items = await only('gutter', 'leader', 'roofLine', 'outlet');
    expect(['A6', 'I7', 'J4', 'J8'].flatMap((id) => says(items, id))).toEqual(['checklists.A6.what', 'checklists.I7.what', 'checklists.J4Roof.what', 'checklists.J8.what']);
  });
  test('a swale has nothing to flush', async () => {
    expect(says(await only('swale', 'outlet'), 'I7')).toEqual([]);
  });
  test('and a heading names only the items under it', async () => {
    const headings = (items: typeof tern) => itemGroups.map((group) => groupText(group, items.filter((item) => item.group === group).map(({ template }) => template)));
    expect(headings(tern)).toEqual(itemGroups.map((group) => `checklists.group.${group}`));
    expect(headings(await only('gutter', 'leader', 'roofLine', 'outlet'))).toEqual(expect.arrayContaining(
      ['checklists.group.C.dig', 'checklists.group.D.roof', 'checklists.group.G.outlet', 'checklists.group.I.ground']));
    expect(headings(await lawnItems)).toContain('checklists.group.D.inlets');
  });
});

describe('a lawn drained by gravity', () => {
  test('has about 30 items and nothing of pump or concrete', async () => {
    const items = await buildChecklist(lawn());
    expect(items.length).toBeGreaterThanOrEqual(25);
    expect(items.length).toBeLessThanOrEqual(35);
    expect(items.filter(({ template }) => /^(F|H|J1|J2|J5|D2|D4|I1|I2|I3|C1|C2|B5)/.test(template))).toEqual([]);
  });
});

describe('concrete that goes back into a cut', () => {
  /** The lawn with a walk cut over its pipe, or around its inlet; neither has a channel. */
  const cutAt = (part: string) => { const base = lawn(); return { ...base, construction: { ...base.construction, slabCuts: [{ id: 'X1', name: 'Walk', length: 2, width: 0.4, thickness: 0.1, reinforcement: 'none' as const, part }] } }; };
  const pipe = lawn().system.parts.find(({ kind }) => kind === 'pipe')?.id ?? '';
  test.each([[pipe, 'checklists.D4Ends.what'], ['CB1', 'checklists.D4Inlet.what']])('is held at %s by tape, dowels and forms, with no channel on the job', async (part, what) => {
    const items = await buildChecklist(cutAt(part));
    expect(items.filter(({ template }) => ['D4', 'I1', 'I2', 'I3'].includes(template)).map((item) => item.key)).toEqual([`D4:${part}`, `I1:${part}`, `I3:${part}`]);
    expect(says(items, 'D4')).toEqual([what]);
    const states = (proven: readonly string[]) => items.map(({ key, template, part: at }): ItemInState => ({ key, template, part: at, state: proven.includes(template) ? 'proven' : 'open', freshUntil: null }));
    const held = (proven: readonly string[]) => heldBy(states(proven), `I3:${part}`, { at: 0, mayDig: true });
    expect(held([])).toEqual([{ holdPoint: 'HP-13', items: [`D4:${part}`, `I1:${part}`] }]);
    expect(held(['I1'])).toEqual([{ holdPoint: 'HP-13', items: [`D4:${part}`] }]);
    expect(held(['D4', 'I1'])).toEqual([]);
  });
  test('measures the edge above a grate, and the step to the old slab where there is none', async () => {
    const measures = async (part: string) => (await buildChecklist(cutAt(part))).find(({ template }) => template === 'I3')?.requirement.measures.map(({ name }) => name);
    expect([await measures('CB1'), await measures(pipe)]).toEqual([['finish', 'edge'], ['finish', 'step']]);
  });
});

describe('lines in the ground', () => {
  const bare = () => { const base = lawn(); return { ...base, site: { ...base.site, utilities: [] } }; };
  const ticket = (utility: string, answer: 'marked' | 'clear' | 'none', draft = false) => ({ draft, answers: [{ utility, answer, at: '2026-03-02T10:00:00Z' }] });
  test('that a ticket calls marked or the homeowner declares are exposed by hand, also where the designer drew none', async () => {
    expect((await buildChecklist(bare())).filter(({ template }) => template === 'C3')).toEqual([]);
    const ground = groundLines(bare(), [ticket('Gas', 'marked'), ticket('Sewer', 'clear'), ticket('Cable', 'none'), ticket('Phone', 'marked', true)], [{ question: 'septic', state: 'yes' }, { question: 'pool', state: 'no' }, { question: 'locator', state: 'yes' }]);
    const items = (await buildChecklist(bare(), itemTemplates, ground)).filter(({ template }) => template === 'C3');
    expect(items.map(({ key, holdPoint, part }) => [key, holdPoint, part])).toEqual([['C3:p-septic', 'HP-4', null], ['C3:t-gas', 'HP-4', null]]);
    expect(items.map(({ requirement }) => itemText(requirement, 'what'))).toEqual(['checklists.C3Private.what', 'checklists.C3Line.what']);
    expect(items.map(({ requirement }) => requirement.params['line'])).toEqual(['checklists.private.septic', 'Gas']);
  });
  test('that are drawn stay one step, with a photo and a name for each; a mark of the same kind is the drawn line', async () => {
    const document = site('tern-hollow');
    const ground = groundLines(document, [ticket('Power', 'marked'), ticket('Cable', 'marked'), ticket('Gas', 'marked')], [{ question: 'irrigation', state: 'yes' }]);
    const items = (await buildChecklist(document, itemTemplates, ground)).filter(({ template }) => template === 'C3');
    expect(items.map(({ key, requirement }) => [key, requirement.minPhotos])).toEqual([['C3', 3], ['C3:t-gas', 1]]);
    expect(items[0]?.requirement.params).toMatchObject({ 'at:U1': 'Buried service to the garage', 'at:U3': 'Irrigation main' });
  });
  test('that are not crossed are measured off the trench in place of being exposed; too near is no failure but not enough', async () => {
    const [line] = (await buildChecklist(bare(), itemTemplates, groundLines(bare(), [ticket('Gas', 'marked')], []))).filter(({ template }) => template === 'C3');
    if (line === undefined) throw new Error('no line');
    const measured = (name: string, value: number) => ({ verdict: 'kept' as const, fact: { id: `00000000-0000-7000-8000-0000000000${name.length}`, deviceId: '', seq: 1, deviceTime: '2026-03-02T10:00:00Z', factVersion: 1 as const, revisionId: '', itemKey: line.key, requirementHash: line.requirementHash, seen: [], kind: 'measured' as const, name: `${name}:t-gas`, value } });
    const missing = (...facts: ReturnType<typeof measured>[]) => { const { state, missing: lack } = foldItem({ ...line.requirement, evidence: ['value'] }, facts); return [state, ...lack]; };
    expect(missing()).toEqual(['open', 'value:depth:t-gas', 'value:clearance:t-gas']);
    expect(missing(measured('offTrench', 0.7))).toEqual(['proven']);
    expect(missing(measured('offTrench', 0.5))).toEqual(['started', 'value:depth:t-gas', 'value:clearance:t-gas']);
    expect(missing(measured('offTrench', 0.5), measured('depth', 0.4), measured('clearance', 0.4))).toEqual(['proven']);
    expect(missing(measured('clearance', 0.2))).toEqual(['failed', 'outside:clearance:t-gas', 'correction']);
  });
});
