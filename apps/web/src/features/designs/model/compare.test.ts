import { readFileSync } from 'node:fs';
import { evaluate, type DesignDocument, type Evaluation } from '@yardfall/calc';
import { describe, expect, test } from 'vitest';
import { compare, type Difference } from './compare.ts';

const document = JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/ridgeback.json', import.meta.url), 'utf8')) as DesignDocument;
const evaluation = evaluate(document, { band: false });
const names = (differences: readonly Difference[]): string[] => differences.map(({ group, change, id, path }) => [group, change, id, ...path].join(' '));
const withDocument = (changed: DesignDocument, computed: Evaluation | null = evaluation): string[] => names(compare({ document, evaluation }, { document: changed, evaluation: computed }));
const { site, system } = document;
const pipe = system.parts.find(({ kind }) => kind === 'pipe');
if (pipe?.kind !== 'pipe') throw new Error('the site has a pipe');
const withPart = (change: (part: DesignDocument['system']['parts'][number]) => DesignDocument['system']['parts'][number]): DesignDocument => ({ ...document, system: { ...system, parts: system.parts.map((part) => (part.id === pipe.id ? change(part) : part)) } });

describe('two revisions differ in exactly what was changed', () => {
  test('in nothing', () => {
    expect(withDocument(structuredClone(document), structuredClone(evaluation))).toEqual([]);
  });

  test('a figure of a part, one within a group of it, and where it drains to', () => {
    expect(withDocument(withPart((part) => ({ ...part, length: pipe.length + 1 }) as typeof part))).toEqual([`parts changed ${pipe.id} length`]);
    expect(withDocument(withPart((part) => ({ ...part, drainsTo: null })))).toEqual([`parts changed ${pipe.id} drainsTo`]);
    const channel = system.parts.find(({ kind }) => kind === 'channel');
    if (channel?.kind !== 'channel') throw new Error('the site has a channel');
    const locked: DesignDocument = { ...document, system: { ...system, parts: system.parts.map((part) => (part.id === channel.id ? { ...channel, grate: { ...channel.grate, locked: !channel.grate.locked } } : part)) } };
    expect(withDocument(locked)).toEqual([`parts changed ${channel.id} grate locked`]);
  });

  test('a part that came and one that went', () => {
    expect(withDocument({ ...document, system: { ...system, parts: [...system.parts, { ...pipe, id: 'P9', name: 'Second pipe' }] } })).toEqual(['parts added P9']);
    expect(withDocument({ ...document, system: { ...system, parts: system.parts.filter(({ id }) => id !== pipe.id) } })).toEqual([`parts removed ${pipe.id}`]);
  });

  test('levels: of a sill, a spot, a low spot, an outlet, the bench mark', () => {
    const [sill] = site.sills;
    const [spot] = site.spotLevels;
    expect(withDocument({ ...document, site: { ...site, sills: site.sills.map((item) => (item === sill ? { ...item, level: item.level + 0.01 } : item)) } })).toEqual([`levels changed ${sill?.id ?? ''} level`]);
    expect(withDocument({ ...document, site: { ...site, spotLevels: site.spotLevels.map((item) => (item === spot ? { ...item, position: { x: 1, y: 2 } } : item)) } })).toEqual([`levels changed ${spot?.id ?? ''} position`]);
    expect(withDocument({ ...document, site: { ...site, datum: { ...site.datum, level: site.datum.level + 1 } } })).toEqual(['levels changed datum level']);
  });

  test('a surface, a shape of the plan, and what no other group names', () => {
    const [first] = site.catchments;
    expect(withDocument({ ...document, site: { ...site, catchments: site.catchments.map((item) => (item === first ? { ...item, area: 99 } : item)) } })).toEqual([`surfaces changed ${first?.id ?? ''} area`]);
    const plan = { picture: null, north: null, shapes: [{ id: 'Z1', name: 'House', kind: 'area', use: 'house', points: [{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 1, y: 1 }], of: null }] } as const;
    const drawn = { ...document, site: { ...site, plan: { ...plan, shapes: [] } } };
    expect(names(compare({ document: drawn, evaluation }, { document: { ...drawn, site: { ...site, plan } }, evaluation }))).toEqual(['plan added Z1']);
    expect(withDocument({ ...document, site: { ...site, soil: { ...site.soil, frostDepth: 0.77 } } })).toEqual(['rest changed site.soil.frostDepth site soil frostDepth']);
    expect(withDocument({ ...document, rain: { ...document.rain, allowance: 0.1 } })).toEqual(['rest changed rain.allowance rain allowance']);
  });

  test('a freeboard and a figure of a part', () => {
    const [row] = evaluation.results.freeboards;
    const freeboards = evaluation.results.freeboards.map((item) => (item === row ? { ...item, lower: item.lower - 0.01 } : item));
    expect(withDocument(document, { ...evaluation, results: { ...evaluation.results, freeboards } })).toEqual([`results changed ${row?.sill ?? ''} ${String(row?.returnPeriod)}`]);
    const pipes = evaluation.results.pipes.map((item) => (item.part === pipe.id ? { ...item, fullFlow: item.fullFlow * 2 } : item));
    expect(withDocument(document, { ...evaluation, results: { ...evaluation.results, pipes } })).toEqual([`results changed ${pipe.id} designs.line.fullFlow`]);
  });

  test('a finding that came, one that went, one that says another figure', () => {
    const [finding] = evaluation.findings;
    if (finding === undefined) throw new Error('the site has findings');
    const key = `${finding.code} ${finding.at ?? ''}`.trim();
    expect(withDocument(document, { ...evaluation, findings: evaluation.findings.slice(1) })).toEqual([`findings removed ${key}`]);
    expect(withDocument(document, { ...evaluation, findings: [...evaluation.findings, { ...finding, at: 'P9' }] })).toEqual([`findings added ${finding.code} P9`]);
    expect(withDocument(document, { ...evaluation, findings: evaluation.findings.map((item) => (item === finding ? { ...item, severity: 'stop' } : item)) })).toEqual([`findings changed ${key}`]);
  });

  test('another name alone: what is said of the part by name is no difference', () => {
    const renamed = withPart((part) => ({ ...part, name: 'Run by the fence' }));
    expect(withDocument(renamed, evaluate(renamed, { band: false }))).toEqual([`parts changed ${pipe.id} name`]);
  });

  test('a quantity', () => {
    const [quantity] = evaluation.results.quantities;
    if (quantity === undefined) throw new Error('the site has quantities');
    const quantities = evaluation.results.quantities.map((item) => (item === quantity ? { ...item, amount: item.amount + 1 } : item));
    expect(withDocument(document, { ...evaluation, results: { ...evaluation.results, quantities } })).toEqual([`quantities changed ${`${quantity.code} ${quantity.part ?? ''}`.trim()}`]);
  });
});
