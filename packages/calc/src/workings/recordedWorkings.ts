import type { Working } from '../results/results.ts';
import { storedSheet } from './crest.ts';
import { minutesSheet } from './minutes.ts';
import { indexBy, symbol, working, type WorkingInput } from './working.ts';

const routed = 'Coupled level-pool routing of the measured storm, Chow, Maidment and Mays 1988 section 8.2';
const levels = ['withSystem', 'withoutSystem', 'offTwin', 'onTwin'] as const;

/** A measured storm: highest levels, freeboards, minutes over each sill, and what the pumps did. */
export function recordedWorkings({ document, results }: WorkingInput): Working[] {
  const { recorded } = results;
  if (recorded === null) return [];
  const cycles = Math.max(1, recorded.starts);
  return [
    ...recorded.levels.map((item, index) => {
      const spot = indexBy(document.site.lowSpots, ({ id }) => id === item.lowSpot);
      return storedSheet(document, spot, `/results/recorded/levels/${index}/maxLevel`, item.maxLevel, routed);
    }),
    ...recorded.freeboards.flatMap((item, index) => {
      const pointer = `/results/recorded/freeboards/${index}`;
      const place = indexBy(document.site.sills, ({ id }) => id === item.sill);
      const sill = document.site.sills[place]!;
      const pond = indexBy(recorded.levels, ({ lowSpot }) => lowSpot === sill.lowSpot);
      return [
        ...levels.map((field) => working({
          result: `${pointer}/${field}`, at: sill.id, formula: 'F = z_s - z_max', value: item[field], unit: 'height', source: routed, tolerance: 1e-6, symbols: [
            symbol('z_s', 'sillLevel', sill.level, 'level', `/site/sills/${place}/level`),
            symbol('z_max', 'highestLevel', sill.level - item[field], 'level', field === 'withSystem' && pond >= 0 ? `/results/recorded/levels/${pond}/maxLevel` : null),
          ],
        })),
        minutesSheet(`${pointer}/minutesOverSill`, sill.id, item.minutesOverSill), minutesSheet(`${pointer}/minutesOverSillWithoutSystem`, sill.id, item.minutesOverSillWithoutSystem),
      ];
    }),
    working({
      result: '/results/recorded/starts', at: null, formula: 'N = n', value: recorded.starts, unit: 'count', source: `Starts of the pumps, each located in time. ${routed}`,
      symbols: [symbol('n', 'startsCounted', recorded.events.filter(({ kind }) => kind === 'pumpOn').length, 'count', '/results/recorded/events')],
    }),
    working({
      result: '/results/recorded/runTime', at: null, formula: 'T = n*T_m', value: recorded.runTime, unit: 'duration', source: routed, tolerance: 1e-6, symbols: [
        symbol('n', 'runs', cycles, 'count', recorded.starts > 0 ? '/results/recorded/starts' : null), symbol('T_m', 'meanRun', recorded.runTime / cycles, 'seconds'),
      ],
    }),
  ];
}
