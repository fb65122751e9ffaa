import { readFileSync } from 'node:fs';
import { evaluate } from '@yardfall/calc';
import type { DesignDocument, Part } from '@yardfall/calc';
import { report, timed } from './measure.ts';

const demo = JSON.parse(readFileSync(new URL('../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const sizes = [1, 4, 16] as const;
/** A cost that grows faster than the work shows as a share above this; caches and clocks make up the rest. */
const mostGrowth = 1.5;

/** The demo storm drawn out: the depths of the longest duration go on for days. */
function longer(times: number): DesignDocument {
  const { table } = demo.rain;
  const day = table.depths.at(-1) ?? [];
  const long = [172_800, 345_600];
  return {
    ...demo, rain: {
      ...demo.rain, storm: { ...demo.rain.storm, duration: 21_600 * times },
      table: { ...table, durations: [...table.durations, ...long], depths: [...table.depths, ...long.map((_, i) => day.map((depth) => depth * (1.1 + 0.1 * i)))] },
    },
  };
}

/** Ids of one copy of the site: every reference in the document is an id of the document. */
function renamed<T>(value: T, ids: ReadonlySet<string>, copy: number): T {
  if (typeof value === 'string') return (ids.has(value) ? `${value}.${copy}` : value) as T;
  if (Array.isArray(value)) return value.map((item) => renamed<unknown>(item, ids, copy)) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, key === 'kind' || key === 'name' ? item : renamed<unknown>(item, ids, copy)])) as T;
}

/** The demo yard several times beside itself in one document. */
function wider(times: number): DesignDocument {
  const ids = new Set([...demo.site.lowSpots, ...demo.site.sills, ...demo.site.catchments, ...demo.system.parts].map(({ id }) => id));
  const copies = <T>(list: readonly T[]): T[] => Array.from({ length: times }, (_, copy) => list.map((item) => renamed(item, ids, copy))).flat();
  return {
    ...demo, site: { ...demo.site, lowSpots: copies(demo.site.lowSpots), sills: copies(demo.site.sills), catchments: copies(demo.site.catchments) },
    system: { parts: copies<Part>(demo.system.parts) }, construction: { ...demo.construction, slabCuts: [], trenches: [] },
  };
}

for (const [what, grow] of [['storm length', longer], ['parts', wider]] as const) {
  let first = 0;
  for (const times of sizes) {
    const document = grow(times);
    const { median } = timed(() => { evaluate(document, { band: false }); }, times === 16 ? 5 : 9);
    if (times === 1) first = median;
    report(`${what} ${times}x`, median, 'ms');
    if (times > 1) report(`${what} ${times}x: cost per work against 1x`, median / first / times, '-', mostGrowth);
  }
}
