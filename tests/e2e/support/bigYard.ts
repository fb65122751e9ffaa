import { readFileSync } from 'node:fs';
import type { DesignDocument, Part } from '@yardfall/calc';
import { inRoot } from '../../../tools/paths.mjs';

/** Five more gutters and leaders on the roof line. */
const sides = ['North', 'South', 'Porch', 'Garage', 'Shed'];

/** The demo company's pumped yard. */
export const ternHollow = (): DesignDocument => JSON.parse(readFileSync(inRoot('prisma', 'seed', 'sites', 'tern-hollow.json'), 'utf8')) as DesignDocument;

/** Tern Hollow as large as a yard of this trade gets: 25 parts and 200 levels. */
export function bigYard(): DesignDocument {
  const site = ternHollow();
  const { parts } = site.system;
  const copy = (kind: Part['kind'], change: object): Part => ({ ...parts.find((part) => part.kind === kind), ...change }) as Part;
  const more = sides.flatMap((side, at) => [
    copy('gutter', { id: `G${String(at + 3)}`, name: `${side} gutter`, drainsTo: `D${String(at + 3)}` }), copy('leader', { id: `D${String(at + 3)}`, name: `${side} leader`, drainsTo: 'R1' }),
  ]);
  const lid = copy('outlet', { id: 'O3', name: 'Spare lid', drainsTo: null });
  const known = site.site.spotLevels.map((spot) => ({ ...spot, position: null }));
  // A lawn that falls gently from the house, shot on a grid.
  const shot = Array.from({ length: 200 - known.length }, (_, at) => ({
    id: `S${String(at + 1)}`, name: `Shot ${String(at + 1)}`, level: 30.44 - 0.002 * Math.floor(at / 10) - 0.001 * (at % 10), station: null, position: { x: 2 * (at % 10), y: 2 * Math.floor(at / 10) },
  }));
  return { ...site, site: { ...site.site, plan: null, spotLevels: [...known, ...shot] }, system: { ...site.system, parts: [...parts, ...more, lid] } };
}
