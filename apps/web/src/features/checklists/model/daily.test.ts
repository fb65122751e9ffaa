import { buildChecklist, DesignDocumentSchema, itemTemplates, type BuiltItem, type Checklist, type ChecklistItem, type FieldFact } from '@yardfall/contracts';
import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { nothingTyped, readiness } from './draft.ts';
import { countedPhotos, measuresAsked } from './evidence.ts';
import { withLastName } from './lastName.ts';
import { nextOf } from './next.ts';
import { lookedAtToday, viewOf, type ItemView } from './view.ts';

const document = DesignDocumentSchema.parse(JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')));
const built = await buildChecklist(document, itemTemplates, [], { timeZone: 'America/New_York', cancelUntil: '2026-03-06T05:00:00.000Z' });

function asItem({ key, template, group, part, position, holdPoint, requirement, requirementHash }: BuiltItem): ChecklistItem {
  return { key, template, group, part, partName: null, position, holdPoint, requirement, requirementHash, state: 'open', heldBy: [], missing: [], reopenedReason: null, facts: [] };
}
/** The list as a phone took it along: nothing of the work was known to the office then. */
const list: Checklist = { jobId: 'job', revisionId: 'rev', items: built.map(asItem), holdPoints: [], digging: [{ from: '2026-02-20T05:00:00Z', until: '2026-03-30T04:00:00Z' }] };

afterEach(() => { vi.useRealTimers(); });

let made = 0;
function here(template: string, at: string, body: object): FieldFact {
  const item = list.items.find((one) => one.template === template);
  made += 1;
  const id = `00000000-0000-7000-8000-${String(made).padStart(12, '0')}`;
  return { id, deviceId: 'd', seq: made, deviceTime: at, factVersion: 1, revisionId: 'rev', itemKey: item?.key ?? '', requirementHash: item?.requirementHash ?? '', seen: [], ...body } as unknown as FieldFact;
}
const look = (at: string): FieldFact[] => [here('C5', at, { kind: 'photo', photoId: `p${at}`, takenAt: at }), here('C5', at, { kind: 'written', name: 'competentPerson', text: 'Rosa Delgado' }), here('C5', at, { kind: 'ticked', note: '' })];
const of = (waiting: readonly FieldFact[], at: string) => viewOf(list, waiting, Date.parse(at));
const stepOf = (view: ReturnType<typeof of>, template: string): ItemView => {
  const found = view.items.find(({ item }) => item.template === template);
  if (found === undefined) throw new Error(`no ${template}`);
  return found;
};
const heldAt = (view: ReturnType<typeof of>, template: string) => stepOf(view, template).heldBy.map(({ holdPoint }) => holdPoint);

describe('the look at the trench, without a signal', () => {
  const monday = look('2026-03-02T13:00:00Z');
  test('holds the work in the trench on the next day, and comes back as the step that is next', () => {
    expect(heldAt(of(monday, '2026-03-02T20:00:00Z'), 'F1')).not.toContain('HP-trench');
    const tuesday = of(monday, '2026-03-03T12:00:00Z');
    expect(heldAt(tuesday, 'F1')).toContain('HP-trench');
    expect([countedPhotos(stepOf(of(monday, '2026-03-02T20:00:00Z'), 'C5')), countedPhotos(stepOf(tuesday, 'C5'))]).toEqual([1, 0]);
    expect(stepOf(tuesday, 'C5')).toMatchObject({ state: 'open', missing: ['tick', 'photo:1', 'text:competentPerson'] });
    expect(nextOf({ ...tuesday, items: tuesday.items.filter(({ item }) => ['C5', 'F1'].includes(item.template)).map((view) => (view.item.template === 'C5' ? { ...view, heldBy: [] } : view)) })?.item.template).toBe('C5');
  });
  test('is one photo and one press where nothing changed: the name stands there', () => {
    const taken = here('C5', '2026-03-03T12:00:00Z', { kind: 'photo', photoId: 'p2', takenAt: '2026-03-03T12:00:00Z' });
    const tuesday = of([...monday, taken], '2026-03-03T12:00:00Z');
    const c5 = stepOf(tuesday, 'C5');
    const { draft } = withLastName({ draft: nothingTyped }, c5);
    expect(draft.texts).toEqual({ competentPerson: 'Rosa Delgado' });
    // What a press records bears the moment of the press.
    vi.useFakeTimers({ now: Date.parse('2026-03-03T12:01:00Z') });
    expect(readiness(draft, c5, tuesday, ['crew'])).toMatchObject({ finishes: true, bodies: [{ kind: 'written', text: 'Rosa Delgado' }, { kind: 'ticked' }] });
    expect(readiness(nothingTyped, c5, tuesday, ['crew'])).toMatchObject({ bodies: [] });
  });
  test('is ended by rain, with one press, as long as a trench is open', () => {
    const at = '2026-03-02T20:00:00Z';
    expect(lookedAtToday(of(monday, at).items)?.item.template).toBe('C5');
    const wet = of([...monday, here('C5', '2026-03-02T15:00:00Z', { kind: 'rained' })], at);
    expect([lookedAtToday(wet.items), heldAt(wet, 'E2').includes('HP-trench')]).toEqual([null, true]);
    const covered = { ...list, items: list.items.map((item) => (['E6', 'G7'].includes(item.template) ? { ...item, requirement: { ...item.requirement, evidence: [] } } : item)) };
    expect(lookedAtToday(viewOf(covered, monday, Date.parse(at)).items)).toBeNull();
  });
});

describe('what is asked as things stand', () => {
  test('is the bypass pump once rain is likely, as it is typed and as it is on record', () => {
    const a6 = stepOf(of([], '2026-03-02T11:00:00Z'), 'A6');
    const names = (view: ItemView, typed: Record<string, number>) => measuresAsked(view, typed).map(({ name }) => name);
    expect([names(a6, {}), names(a6, { rainChance: 0.39 }), names(a6, { rainChance: 0.4 })]).toEqual([['rainChance'], ['rainChance'], ['rainChance', 'bypassPump']]);
    const told = of([here('A6', '2026-03-02T11:00:00Z', { kind: 'measured', name: 'rainChance', value: 0.6 })], '2026-03-02T11:00:00Z');
    expect(names(stepOf(told, 'A6'), {})).toEqual(['rainChance', 'bypassPump']);
    expect(heldAt(told, 'C2')).toContain('HP-rain');
  });
  test('is no tick of a contract that can still be cancelled', () => {
    const view = of([], '2026-03-02T11:00:00Z');
    const a1 = stepOf(view, 'A1');
    expect([a1.tooEarly, readiness(nothingTyped, a1, view, ['owner']).bodies]).toEqual([true, []]);
    const later = of([], '2026-03-06T05:00:00Z');
    expect(readiness(nothingTyped, stepOf(later, 'A1'), later, ['owner'])).toMatchObject({ finishes: true, bodies: [{ kind: 'ticked' }] });
  });
});
