import type { ProtectedStorm } from '../results/decisions.ts';
import type { Working } from '../results/results.ts';
import { storedSheet } from './crest.ts';
import { minutesSheet } from './minutes.ts';
import { indexBy, symbol, working, type WorkingInput } from './working.ts';

const routed = 'Coupled level-pool routing with one thing gone wrong, Chow, Maidment and Mays 1988 section 8.2';

/** What happens when something fails: each level by its water, each freeboard by its level. */
export function whatIfWorkings({ document, results }: WorkingInput): Working[] {
  return results.whatIfs.flatMap((item, index) => {
    const pointer = `/results/whatIfs/${index}`;
    const levels = item.maxLevels.map((level, spot) => storedSheet(document, spot, `${pointer}/maxLevels/${spot}`, level, routed));
    const until = item.outage === null ? [] : [working({
      result: `${pointer}/outage/1`, at: null, formula: 'T_e = T_b + t', value: item.outage[1], unit: 'seconds', source: 'Half an hour from the start that is worst, found by trial of every start', symbols: [
        symbol('T_b', 'outageStart', item.outage[0], 'seconds', `${pointer}/outage/0`), symbol('t', 'outageLength', item.outage[1] - item.outage[0], 'seconds'),
      ], tolerance: 1e-6,
    })];
    const sills = item.sills.flatMap((one, at) => {
      const place = indexBy(document.site.sills, ({ id }) => id === one.sill);
      const sill = document.site.sills[place]!;
      const spot = indexBy(document.site.lowSpots, ({ id }) => id === sill.lowSpot);
      return [
        working({
          result: `${pointer}/sills/${at}/freeboard`, at: sill.id, formula: 'F = z_s - z_max', value: one.freeboard, unit: 'height', source: routed, tolerance: 1e-6, symbols: [
            symbol('z_s', 'sillLevel', sill.level, 'level', `/site/sills/${place}/level`), symbol('z_max', 'highestLevel', item.maxLevels[spot]!, 'level', `${pointer}/maxLevels/${spot}`),
          ],
        }),
        minutesSheet(`${pointer}/sills/${at}/minutesOverSill`, sill.id, one.minutesOverSill),
      ];
    });
    return [...levels, ...until, ...sills];
  });
}

/** Least freeboard of all sills, told at the lowest of them. */
function leastSheet({ document }: WorkingInput, result: string, value: number, source: string): Working {
  const place = document.site.sills.reduce((low, sill, index) => (sill.level < document.site.sills[low]!.level ? index : low), 0);
  const sill = document.site.sills[place]!;
  return working({
    result, at: sill.id, formula: 'F = z_s - z_max', value, unit: 'height', source, tolerance: 1e-6,
    symbols: [symbol('z_s', 'sillLevel', sill.level, 'level', `/site/sills/${place}/level`), symbol('z_max', 'highestLevel', sill.level - value, 'level')],
  });
}

/** What each input moves alone. */
export function bandWorkings(input: WorkingInput): Working[] {
  const { band } = input.results;
  if (band === null) return [];
  const source = 'One input at its end, all others in the middle; ranges ours';
  const middle = symbol('F_m', 'freeboardOfTwin', band.middle, 'height', '/results/band/middle');
  return [
    leastSheet(input, '/results/band/middle', band.middle, 'Every input in the middle, the pump only above its start level'),
    ...band.ranking.flatMap((item, index) => {
      const pointer = `/results/band/ranking/${index}`;
      const end = (field: 'low' | 'high'): Working => working({
        result: `${pointer}/${field}`, at: item.at, formula: 'F = F_m + d', value: item[field], unit: 'height', source, tolerance: 1e-6, symbols: [middle, symbol('d', 'movedByInput', item[field] - band.middle, 'height')],
      });
      return [
        end('low'), end('high'),
        working({
          result: `${pointer}/swing`, at: item.at, formula: 'w = max(F_1, F_2) - min(F_1, F_2)', value: item.swing, unit: 'height', source, tolerance: 1e-6,
          symbols: [symbol('F_1', 'freeboardAtLow', item.low, 'height', `${pointer}/low`), symbol('F_2', 'freeboardAtHigh', item.high, 'height', `${pointer}/high`)],
        }),
      ];
    }),
  ];
}

export function protectionWorkings(input: WorkingInput): Working[] {
  const { protection } = input.results;
  if (protection === null) return [];
  const source = 'Largest storm of the table with every smaller one kept out: lower end of the band, inlets half blocked; ours';
  const sheet = (name: 'powerOn' | 'powerOut' | 'gutterOverflowing', storm: ProtectedStorm | null): Working[] =>
    storm?.lower === undefined || storm.lower === null ? [] : [leastSheet(input, `/results/protection/${name}/lower`, storm.lower, source)];
  return [...sheet('powerOn', protection.powerOn), ...sheet('powerOut', protection.powerOut), ...sheet('gutterOverflowing', protection.gutterOverflowing)];
}
