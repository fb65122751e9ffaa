import type { Evaluation, Finding, StormRun } from '@yardfall/calc';
import { ft, gpm } from './units.ts';

/** An evaluation of the size and shape of the real one; its figures are made up to be drawn, not to be believed. */

const step = 30;
const samples = 480;
const peak = 240;

const bump = (index: number, center: number, width: number): number => Math.max(0, 1 - Math.abs(index - center) / width);
const series = (value: (index: number) => number): number[] => Array.from({ length: samples }, (_, index) => value(index));

export const stormRun: StormRun = {
  returnPeriod: 25, start: 36000, step,
  intensity: series((i) => (Math.floor(i / 10) === peak / 10 ? 6.86e-5 : 5e-5 * bump(Math.floor(i / 10) * 10, peak, 120))),
  inflow: series((i) => gpm(67) * bump(i, peak + 6, 90)),
  pumpFlow: series((i) => (i > 190 && i < 330 ? gpm(31) : 0)),
  pondLevel: series((i) => ft(99.62) + ft(0.17) * bump(i, peak + 14, 40)),
  basinLevel: series((i) => ft(96.5) + ft(3) * bump(i, peak + 14, 90)),
  events: [{ time: 36000 + 190 * step, kind: 'pumpOn', part: 'PU1' }, { time: 36000 + 330 * step, kind: 'pumpOff', part: 'PU1' }],
  starts: 1, runTime: 140 * step, maxPond: ft(99.79),
};

const finding = (code: string, severity: Finding['severity'], at: string | null): Finding => ({
  code, check: code.split('.')[0] ?? code, severity, at, params: {}, limit: {}, source: 'common practice', remedy: null,
});

const curve = (head: (flow: number) => number): { flow: number; head: number }[] =>
  Array.from({ length: 26 }, (_, index) => ({ flow: gpm(index * 2), head: head(gpm(index * 2)) }));
const system = (lift: number) => (flow: number): number => lift + 6.3e5 * flow * flow;

export const evaluation: Evaluation = {
  calcVersion: 'test', massError: 0, workings: [],
  findings: [
    finding('C4.share', 'caution', 'C1'), finding('B7.flotationAtGrade', 'stop', 'B1'), finding('P1.duty', 'note', 'PU1'),
    finding('B3.off', 'note', 'B1'), finding('X1.job', 'note', null),
  ],
  results: {
    gravity: [
      { outlet: 'K1', neededLevel: ft(98.45), shortfall: ft(0.9), shortfallWithMargin: ft(1.07), feasible: false },
      { outlet: 'K2', neededLevel: ft(98.4), shortfall: ft(1), shortfallWithMargin: ft(1.17), feasible: false },
    ],
    peaks: [], gutters: [], channels: [], pipes: [], basins: [], outlets: [], freeboards: [], outage: null, existingDrains: [], grates: [], roofLines: [], swales: [], underdrains: [], dryWells: [], wells: [], whatIfs: [], band: null, protection: null, quantities: [], referrals: [], recorded: null, handDifferences: [],
    pumps: [{
      part: 'PU1', line: 'D1', outlet: 'O1', equivalentLength: ft(142),
      dutyAtOff: { basinLevel: ft(96.5), staticHead: ft(3.4), flow: gpm(31), head: ft(11.3), velocity: 1.46 },
      dutyAtOn: { basinLevel: ft(97.4), staticHead: ft(2.5), flow: gpm(32.5), head: ft(10.7), velocity: 1.53 },
      lineVolume: 0.045, runBack: 0, runBackShare: 0, weepFlow: gpm(1.4), weepShare: 0.046,
      systemCurve: curve(system(ft(3.4))), pumpCurve: curve((flow) => ft(18) * (1 - (flow / gpm(52)) ** 1.91)),
    }],
    lowSpots: [{ lowSpot: 'LS1', volumeToSill: 2.46, volumeToRim: 3.5 }],
    storm: stormRun,
    family: [{
      case: 'noSystem', returnPeriod: 25, maxLevel: ft(100.03), minutesOverSill: 44, start: 36000, step: 60,
      levels: Array.from({ length: 240 }, (_, index) => ft(99.62) + ft(0.41) * Math.min(1, index / 130)),
    }],
  },
};
