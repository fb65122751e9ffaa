import { readFileSync } from 'node:fs';
import { buildChecklist, DesignDocumentSchema, itemTemplates, type BuiltItem } from '@yardfall/contracts';
import { render, type Language } from '@yardfall/text';
import { describe, expect, test } from 'vitest';
import { printedList } from './printed.ts';

const site = (name: string) => DesignDocumentSchema.parse(JSON.parse(readFileSync(new URL(`../../../../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')));
const tern = await buildChecklist(site('tern-hollow'));

/** A lawn drained by gravity (ours): one inlet, one pipe, one outlet; no pump, no concrete. */
async function lawn(): Promise<readonly BuiltItem[]> {
  const base = site('ridgeback');
  const [pipe, outlet] = [base.system.parts.find(({ kind }) => kind === 'pipe'), base.system.parts.find(({ kind }) => kind === 'outlet')];
  if (pipe === undefined || outlet === undefined) throw new Error('the site has no pipe to an outlet');
  const inlet = {
    kind: 'catchBasin' as const, id: 'CB1', name: 'Lawn inlet', drainsTo: pipe.id, lowSpot: base.site.lowSpots[0]?.id ?? '', grateLevel: 30, gratePerimeter: 1.2,
    grateOpenArea: 0.03, clogging: 0.5, invertOut: 29.5, sumpDepth: 0.2,
  };
  return buildChecklist({
    ...base, system: { parts: [inlet, pipe, outlet] },
    construction: { ...base.construction, slabCuts: [], electrical: null, trenchNearFooting: false, foundationWithin1ft: false, poolWithin3m: false },
  });
}

const printed = (items: readonly BuiltItem[], language: Language) =>
  printedList(items.map((item) => ({ ...item, partName: item.part })), (code, params) => render(language, 'us', code, params ?? {}));
const paper = (items: readonly BuiltItem[], language: Language) => printed(items, language).flatMap(({ heading, lines }) => [heading, ...lines.flatMap(({ what, good, photo, after }) => [what, good, photo ?? '', ...after])]).join('\n');

describe('the printed list', () => {
  test('of Tern Hollow, with pump and concrete, has about fifty steps, each with what is good enough and who signs', async () => {
    const lines = printed(tern, 'en').flatMap((group) => group.lines);
    const steps = lines.flatMap((one) => one.steps);
    expect(steps.map(({ key }) => key)).toEqual(tern.map(({ key }) => key));
    // This yard has nearly everything: what is left out is pest control, area drains, a connection that a city inspects, and a backup. Its two outlets have a step each.
    const left = itemTemplates.filter(({ id }) => tern.every(({ template }) => template !== id)).map(({ id }) => id);
    expect([steps.length, left]).toEqual([60, ['C8', 'D6', 'G6', 'H3']]);
    expect(printed(tern, 'en').map(({ heading }) => heading).length).toBe(10);
    for (const { good, signers, what } of lines) expect([good, what, signers.join('')].every((words) => words.length > 3)).toBe(true);
    expect(lines.find(({ steps: [only] }) => only?.key === 'I3:CH1')?.after).toEqual(['Channel set', 'Ready for concrete']);
  });

  test('of a lawn drained by gravity has about thirty, and names nothing that the job does not have', async () => {
    const items = await lawn();
    const count = printed(items, 'en').flatMap((group) => group.lines).length;
    expect(Math.abs(count - 30)).toBeLessThanOrEqual(3);
    expect(paper(items, 'en')).not.toMatch(/\b(pump|(?<!catch )basin|concrete|slurry|slab|saw|grate|channel|breaker|alarm|battery|electric\w*|float|weep hole|check valve|forms|dowel\w*)\b/i);
    expect(paper(items, 'es')).not.toMatch(/(bomba|concreto|losa|sierra|(?<!caja de )rejilla|canal\b|alarma|bater[ií]a|electric|flotador|purga\b|v[aá]lvula|formas)/i);
  });

  test('has one line with a box for each part where steps are worded alike, and a blank for what is read', async () => {
    const items = await buildChecklist(site('lindqvist'));
    const lines = printed(items, 'en').flatMap((group) => group.lines);
    expect([items.length, lines.length]).toEqual([39, 27]);
    const [falls] = lines.filter(({ steps: [first] }) => first?.key === 'E1:P1');
    expect(falls?.steps.map(({ key, part }) => [key, part])).toEqual(['P1', 'P2', 'P3', 'P4'].map((part) => [`E1:${part}`, part]));
    const [first] = falls?.steps ?? [];
    expect(first?.figures.map(({ measure }) => measure.name)).toEqual(items.find(({ key }) => key === 'E1:P1')?.requirement.measures.map(({ name }) => name).filter((name) => name !== 'slope'));
    expect(first?.figures.map(({ limit }) => limit)).toEqual(first?.figures.map(() => 'target'));
    const ties = lines.find(({ steps: [only] }) => only?.key === 'J7')?.steps[0]?.figures ?? [];
    expect(ties.map(({ label }) => label)).toContain('Tape from the first point (Bubbler line, north-east)');
    expect(new Set(ties.map(({ limit }) => limit))).toEqual(new Set([null]));
  });

  test('of Tern Hollow names what it has', () => {
    for (const word of ['pump', 'basin', 'concrete', 'grate', 'alarm', 'Weep hole']) expect(paper(tern, 'en')).toMatch(new RegExp(word, 'i'));
    expect(paper(tern, 'en')).not.toMatch(/\b(inspector|backup|city)\b/i);
  });
});
