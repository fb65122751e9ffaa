import { CUBIC_FOOT, FOOT, GALLON, GALLON_PER_MINUTE, GRAVITY, HOUR, INCH, POUND } from '../common/constants.ts';
import type { DesignDocument } from '../document/document.ts';
import { evaluate } from '../evaluate/evaluate.ts';
import type { Evaluation } from '../results/results.ts';
import { handModel } from '../routing/handModel.ts';
import { handModelOf } from '../routing/handDifference.ts';
import { fixtureText } from './fixtures.ts';
import { siteDocument } from './sites.ts';

export interface PrintedRow {
  readonly what: string;
  readonly printed: number;
  readonly unit: string;
  /** Pointer to the result; an entry of a list is named by its fields: `part=CH1&returnPeriod=10`. */
  readonly path?: string;
  /** The hand model of the design storm with a pump of constant flow, in place of a result. */
  readonly hand?: { readonly gpm: number };
  readonly patch?: readonly { readonly path: string; readonly value: unknown }[];
  readonly why?: string;
}

export interface PrintedSite {
  readonly kind: 'pumped' | 'gravity' | 'referred' | 'infiltration';
  readonly exit: 0 | 2;
  readonly exitWhy?: string;
  readonly refers: boolean;
  readonly source: string;
  readonly notComputed: readonly string[];
  readonly rows: readonly PrintedRow[];
}

export const printedSites = (JSON.parse(fixtureText('sites/expected.json')) as { sites: Readonly<Record<string, PrintedSite>> }).sites;

/** SI value of one printed unit. */
const units: Readonly<Record<string, number>> = {
  ft: FOOT, in: INCH, gpm: GALLON_PER_MINUTE, gal: GALLON, 'ft/s': FOOT, '%': 0.01, s: 1, h: HOUR, count: 1, ratio: 1, lbf: POUND * GRAVITY,
  'cu ft': CUBIC_FOOT, 'cu yd': 27 * CUBIC_FOOT, 'in.ft': FOOT,
};

type Json = Readonly<Record<string, unknown>>;

/** One step of a pointer: a key, or the entry of a list whose fields are as said. */
function stepInto(here: unknown, word: string): unknown {
  if (Array.isArray(here) && word.includes('=')) {
    const wanted = word.split('&').map((pair) => pair.split('=') as [string, string]);
    return here.find((item: Json) => wanted.every(([key, value]) => String(item[key]) === value));
  }
  return typeof here === 'object' && here !== null ? (here as Json)[word] : undefined;
}

export const numberAt = (root: unknown, path: string): number => {
  const value = path.split('/').slice(1).reduce(stepInto, root);
  if (typeof value !== 'number') throw new Error(`no number at ${path}`);
  return value;
};

/** The document with the changes of a row. */
function patched(document: DesignDocument, patch: NonNullable<PrintedRow['patch']>): DesignDocument {
  const copy: unknown = structuredClone(document);
  for (const { path, value } of patch) {
    const words = path.split('/').slice(1);
    const last = words.pop() ?? '';
    const holder = words.reduce(stepInto, copy);
    if (typeof holder !== 'object' || holder === null || !(last in holder)) throw new Error(`nothing to change at ${path}`);
    Object.assign(holder, { [last]: value });
  }
  return copy as DesignDocument;
}

export interface AnsweredRow extends PrintedRow {
  readonly own: number;
  /** Own over printed, less one. */
  readonly off: number;
}

function answer(document: DesignDocument, whole: Evaluation, row: PrintedRow): AnsweredRow {
  const changed = row.patch === undefined ? document : patched(document, row.patch);
  const unit = units[row.unit];
  if (unit === undefined) throw new Error(`no unit ${row.unit}`);
  const own = row.hand === undefined
    ? numberAt(row.patch === undefined ? whole : evaluate(changed, { band: false }), row.path ?? '') / unit
    : byHand(changed, row.hand.gpm) / unit;
  return { ...row, own, off: own / row.printed - 1 };
}

function byHand(document: DesignDocument, gpm: number): number {
  const model = handModelOf(document, document.rain.designReturnPeriod);
  if (model === null) throw new Error('no hand model of this document');
  return handModel({ ...model, pumpFlow: gpm * GALLON_PER_MINUTE }).freeboard;
}

export interface AnsweredSite extends PrintedSite {
  readonly name: string;
  readonly title: string;
  readonly evaluation: Evaluation;
  readonly answers: readonly AnsweredRow[];
}

export function answeredSite(name: string): AnsweredSite {
  const document = siteDocument(name);
  const evaluation = evaluate(document);
  const site = printedSites[name];
  if (site === undefined) throw new Error(`${name} has no printed numbers`);
  return { ...site, name, title: document.title, evaluation, answers: site.rows.map((row) => answer(document, evaluation, row)) };
}

/** Difference that is met without a word. */
export const withinShare = 0.05;

/** Three figures, so that the last bit of the engine does not make the table stale. */
const three = (value: number): string => String(Number(value.toPrecision(3)));
/** A rounded nothing has no sign. */
const tenth = (value: number): string => value.toFixed(1).replace(/^-0\.0$/, '0.0');
const cell = (text: string): string => text.replaceAll('|', '\\|');

function tableOf(site: AnsweredSite): string {
  const rows = site.answers.map(({ what, printed, unit, own, off, why }) => {
    const word = Math.abs(off) <= withinShare ? '' : cell(why ?? 'unexplained');
    return `| ${cell(what)} | ${printed} ${unit} | ${three(own)} ${unit} | ${tenth(100 * off)} % | ${word} |`;
  });
  const verdict = site.refers ? 'goes to an engineer' : site.exit === 2 ? `is stopped: ${site.exitWhy ?? ''}` : 'has no stop';
  return [
    `## ${site.title}`, '', `\`prisma/seed/sites/${site.name}.json\`, ${site.kind}; ${verdict}. Printed: ${site.source}.`, '',
    ...(rows.length === 0 ? [] : ['| number | printed | engine | difference | why, where it is over 5 % |', '| --- | ---: | ---: | ---: | --- |', ...rows, '']),
    ...(site.notComputed.length === 0 ? [] : [`Printed and no result of the engine: ${site.notComputed.join('; ')}.`, '']),
  ].join('\n');
}

/** The demo sites beside their printed numbers as the file SITES.md holds them. */
export function sitesMarkdown(sites: readonly AnsweredSite[]): string {
  return [
    '# Demo sites', '', 'Made by `node -C development --import @oxc-node/core/register packages/calc/bench/writeSites.ts` from `fixtures/sites/expected.json`; a test fails when it is stale.',
    'All sites, their rain and their pump curves are invented. Engine values are rounded to three figures.', '', ...sites.map(tableOf),
  ].join('\n');
}
