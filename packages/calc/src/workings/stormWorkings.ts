import { MINUTE } from '../common/constants.ts';
import type { Sill } from '../document/document.ts';
import { familyRun } from '../evaluate/storms.ts';
import type { FamilyCase, Freeboard, Working, WorkingSymbol } from '../results/results.ts';
import { crestSheet } from './crest.ts';
import { minutesSheet } from './minutes.ts';
import { indexBy, symbol, working, type WorkingInput } from './working.ts';

const routed = 'Coupled level-pool routing of every low spot, basin and line, Chow, Maidment and Mays 1988 section 8.2';

/** Highest level of each picture of the slider, from the water that stands in the first low spot at its crest. */
export function familyWorkings(input: WorkingInput): Working[] {
  const { context, results } = input;
  return results.family.flatMap((member, index) => {
    const run = familyRun(context, member.case, member.returnPeriod);
    const inflowCase = member.case === 'noSystem' ? 'bare' : member.case === 'gutterOverflowing' ? 'gutterOverflowing' : 'system';
    const pointer = `/results/family/${index}`;
    return [
      crestSheet(input, { result: `${pointer}/maxLevel`, value: member.maxLevel, run, inflow: context.inflow(member.returnPeriod, inflowCase) }),
      minutesSheet(`${pointer}/minutesOverSill`, input.document.site.sills[0]?.id ?? null, member.minutesOverSill),
    ];
  });
}

/** Picture of the slider that shows the same run, where the sill stands at the first low spot. */
function pictureOf({ document, results }: WorkingInput, sill: Sill, returnPeriod: number, familyCase: FamilyCase): string | null {
  if (sill.lowSpot !== document.site.lowSpots[0]?.id) return null;
  const index = indexBy(results.family, (member) => member.case === familyCase && member.returnPeriod === returnPeriod);
  return index < 0 ? null : `/results/family/${index}/maxLevel`;
}

type Level = 'withSystem' | 'withoutSystem' | 'offTwin' | 'onTwin';

function levelSheet(input: WorkingInput, item: Freeboard, index: number, field: Level): Working {
  const { document, results } = input;
  const place = indexBy(document.site.sills, (one) => one.id === item.sill);
  const sill = document.site.sills[place]!;
  const from = {
    withSystem: results.storm?.returnPeriod === item.returnPeriod && sill.lowSpot === document.site.lowSpots[0]?.id ? '/results/storm/maxPond' : null,
    withoutSystem: pictureOf(input, sill, item.returnPeriod, 'noSystem'), offTwin: null, onTwin: pictureOf(input, sill, item.returnPeriod, 'system'),
  }[field];
  return working({
    result: `/results/freeboards/${index}/${field}`, at: item.sill, formula: 'F = z_s - z_max', value: item[field], unit: 'height', source: routed, tolerance: 1e-6, symbols: [
      symbol('z_s', 'sillLevel', sill.level, 'level', `/site/sills/${place}/level`), symbol('z_max', 'highestLevel', sill.level - item[field], 'level', from),
    ],
  });
}

function bandSheet(item: Freeboard, index: number, field: 'lower' | 'upper'): Working {
  const pointer = `/results/freeboards/${index}`;
  return working({
    result: `${pointer}/${field}`, at: item.sill, formula: field === 'lower' ? 'F_b = F - s' : 'F_b = F + s', value: item[field], unit: 'height', tolerance: 1e-6,
    source: 'One draw in ten falls below the lower end and one in ten above the upper; the draws vary rain, coefficients, levels, storage, pump and friction; ours', symbols: [
      symbol('F', 'freeboardOfTwin', item.onTwin, 'height', `${pointer}/onTwin`),
      symbol('s', field === 'lower' ? 'bandBelow' : 'bandAbove', field === 'lower' ? item.onTwin - item.lower : item.upper - item.onTwin, 'height'),
    ],
  });
}

/** Freeboards of every sill and return period: the real run, the site as it is, both twins, the band. */
export function freeboardWorkings(input: WorkingInput): Working[] {
  return input.results.freeboards.flatMap((item, index) => [
    ...(['withSystem', 'withoutSystem', 'offTwin', 'onTwin'] as const).map((field) => levelSheet(input, item, index, field)),
    bandSheet(item, index, 'lower'), bandSheet(item, index, 'upper'),
    minutesSheet(`/results/freeboards/${index}/minutesOverSill`, item.sill, item.minutesOverSill),
    minutesSheet(`/results/freeboards/${index}/minutesOverSillWithoutSystem`, item.sill, item.minutesOverSillWithoutSystem),
  ]);
}

export function stormWorkings(input: WorkingInput): Working[] {
  const { context, results } = input;
  const { storm } = results;
  if (storm === null) return [];
  const run = context.run(storm.returnPeriod, 'system', { mode: 'real', record: true });
  const cycles = Math.max(1, storm.starts);
  return [
    crestSheet(input, { result: '/results/storm/maxPond', value: storm.maxPond, run, inflow: context.inflow(storm.returnPeriod, 'system') }),
    working({
      result: '/results/storm/starts', at: null, formula: 'N = n', value: storm.starts, unit: 'count', source: `Starts of the pumps, each located in time. ${routed}`,
      symbols: [symbol('n', 'startsCounted', storm.events.filter(({ kind }) => kind === 'pumpOn').length, 'count', '/results/storm/events')],
    }),
    working({
      result: '/results/storm/runTime', at: null, formula: 'T = n*T_m', value: storm.runTime, unit: 'duration', source: routed, tolerance: 1e-6, symbols: [
        symbol('n', 'runs', cycles, 'count', storm.starts > 0 ? '/results/storm/starts' : null), symbol('T_m', 'meanRun', storm.runTime / cycles, 'seconds'),
      ],
    }),
  ];
}

/** How long the power may be out. The lowest sill stands for all in the sheet. */
export function outageWorkings({ document, results }: WorkingInput): Working[] {
  const { outage } = results;
  if (outage === null) return [];
  const place = document.site.sills.reduce((low, sill, index) => (sill.level < document.site.sills[low]!.level ? index : low), 0);
  const sill = document.site.sills[place]!;
  const source = `The pump without power from every start time that is tried. ${routed}`;
  const sheet = (result: string, value: number): Working => working({
    result, at: sill.id, formula: 'F = z_s - z_max', value, unit: 'height', source, tolerance: 1e-6, symbols: [
      symbol('z_s', 'sillLevel', sill.level, 'level', `/site/sills/${place}/level`), symbol('z_max', 'highestLevel', sill.level - value, 'level'),
    ],
  });
  return [
    working({
      result: '/results/outage/longestSafe', at: null, formula: 'T = 60*n', value: outage.longestSafe, unit: 'minutes', source: `Longest whole minutes that leave no sill short at any start time. ${source}`,
      symbols: [symbol('n', 'wholeMinutes', outage.longestSafe / MINUTE, 'count')],
    }),
    ...outage.cases.flatMap((item, index) => [
      sheet(`/results/outage/cases/${index}/worstFreeboard`, item.worstFreeboard), sheet(`/results/outage/cases/${index}/fromPeak`, item.fromPeak),
    ]),
  ];
}

const parts = ['hand', 'store', 'pumpHead', 'phase', 'response'] as const;

/** The hand calculation, and each cause by which the coupled run differs from it. */
export function handWorkings({ document, results }: WorkingInput): Working[] {
  const lowSpot = document.site.lowSpots[0];
  const place = indexBy(document.site.sills, (sill) => sill.lowSpot === lowSpot?.id);
  const sill = document.site.sills[place];
  return results.handDifferences.flatMap((item, index) => {
    const pointer = `/results/handDifferences/${index}`;
    const at = sill?.id ?? null;
    const source = 'Hand model: one store, a pump of constant flow, no losses; one cause at a time is put in the place of its own';
    const terms: WorkingSymbol[] = parts.map((name) => symbol(`d_${name}`, `hand.${name}`, item[name], 'height', `${pointer}/${name}`));
    const level = sill?.level ?? 0;
    let before = item.hand;
    const steps = parts.slice(1).map((name) => {
      const after = before + item[name];
      const made = working({
        result: `${pointer}/${name}`, at, formula: 'd = F_1 - F_0', value: item[name], unit: 'height', source, tolerance: 1e-6,
        symbols: [symbol('F_1', 'freeboardWithCause', after, 'height'), symbol('F_0', 'freeboardWithoutCause', before, 'height')],
      });
      before = after;
      return made;
    });
    return [
      working({
        result: `${pointer}/hand`, at, formula: 'F = z_s - z_max', value: item.hand, unit: 'height', source, tolerance: 1e-6, symbols: [
          symbol('z_s', 'sillLevel', level, 'level', `/site/sills/${place}/level`), symbol('z_max', 'highestLevel', level - item.hand, 'level'),
        ],
      }),
      ...steps,
      working({ result: `${pointer}/coupled`, at, formula: `F = ${terms.map((one) => one.symbol).join(' + ')}`, value: item.coupled, unit: 'height', source, symbols: terms, tolerance: 1e-6 }),
    ];
  });
}
