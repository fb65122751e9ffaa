import { readFileSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { diversionChoice, evaluate, mergeOptions, OptionSpace, pumpChoice, sizeChoice } from '@yardfall/calc';
import type { Choice, CostIndex, DesignDocument, OptionsSlice } from '@yardfall/calc';
import { report, timed } from './measure.ts';

/** What-ifs and band of the demo design, and the options front of 20,736 combinations of it on two threads. Pump curves A to D are the demo's. */
const document = JSON.parse(readFileSync(new URL('../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const foot = 0.3048;
const inch = 0.0254;
const gallonPerMinute = 6.30902e-5;

const plain = timed(() => { evaluate(document, { band: false }); }, 15).best;
report('what-ifs of the demo design, alone', timed(() => { evaluate(document, { band: false, whatIfs: true }); }, 15).best - plain, 'ms');
const band = timed(() => { evaluate(document, { whatIfs: false }); }, 7).best - plain;
report('band, ranking and protected storm, alone', band, 'ms');

const curves: Readonly<Record<string, readonly (readonly [gpm: number, feet: number])[]>> = {
  A: [[0, 18], [19, 15], [34, 10], [43, 5], [50, 0.5]], B: [[0, 24], [20, 20], [38, 15], [51, 10], [61, 5], [69, 0.5]],
  C: [[0, 30], [32, 25], [50, 20], [62, 15], [72, 10], [80, 5], [86, 0.5]], D: [[0, 37], [40, 30], [70, 25], [92, 20], [108, 15], [120, 10], [130, 5]],
};
const pumps = Object.entries(curves).map(([name, points]) => ({ name, solids: 0.0127, curve: points.map(([gpm, feet]) => ({ flow: gpm * gallonPerMinute, head: feet * foot })) }));
const sized = (kind: Choice['kind'], part: string, field: string, unit: number, sizes: readonly number[]): Choice =>
  sizeChoice(kind, part, sizes.map((size) => ({ id: String(size), name: String(size), fields: { [field]: size * unit } })));
const battery = document.system.parts.find(({ id }) => id === 'M1');
if (battery?.kind !== 'pump') throw new Error('the demo design has its pump');
const choices: Choice[] = [
  ...['G1', 'G2'].flatMap((gutter) => diversionChoice(document, gutter) ?? []),
  sized('collector', 'CH1', 'length', foot, [10, 12, 14, 16, 18, 22]), sized('pipe', 'P1', 'diameter', inch, [3, 4, 6]), sized('basin', 'B1', 'diameter', inch, [24, 30, 36]),
  pumpChoice('M1', pumps), sized('line', 'N1', 'innerDiameter', inch, [1.38, 1.61, 2.07, 2.47]), sized('outlet', 'O1', 'waterLevel', foot, [99.8, 99.9, 100.2]),
  {
    id: 'backup', kind: 'backup',
    alternatives: [{ id: 'none', name: 'none' }, { id: 'battery', name: 'battery', add: [{ ...battery, id: 'M2', role: 'standby', power: 'battery', energy: 2e6, inputPower: 300 }] }],
  },
];
const prices: Readonly<Record<string, readonly number[]>> = {
  G1: [0, 900], G2: [0, 900], CH1: [0, 100, 200, 300, 400, 600], P1: [0, 30, 120], B1: [0, 150, 350], M1: [300, 420, 610, 1300], N1: [0, 60, 160, 300], O1: [150, 0, -50], backup: [0, 800],
};
const cost: CostIndex = {
  base: 5000, alternatives: Object.fromEntries(choices.map(({ id, alternatives }) => [id, Object.fromEntries(alternatives.map((item, i) => [item.id, prices[id]?.[i] ?? 0]))])),
};

const threads = 2;
const source = import.meta.url.endsWith('.ts');
const searched = (index: number): Promise<OptionsSlice> => new Promise((resolve, reject) => {
  const worker = new Worker(new URL(source ? './optionsWorker.ts' : './optionsWorker.js', import.meta.url), { workerData: { document, choices, cost, index, of: threads }, execArgv: process.execArgv });
  worker.once('message', resolve);
  worker.once('error', reject);
});
const start = performance.now();
const used = process.cpuUsage();
const slices = await Promise.all(Array.from({ length: threads }, (_, index) => searched(index)));
const front = mergeOptions(document, choices, cost, slices);
const seconds = (performance.now() - start) / 1000;
report(`options front of ${new OptionSpace(document, choices, cost).count} combinations, ${threads} threads`, seconds, 's', 3);
report('processor time of it, both threads together', process.cpuUsage(used).user / 1e6, 's');
report('combinations that nothing stops', slices.reduce((sum, { allowed }) => sum + allowed, 0), '');
report('combinations measured in full', slices.reduce((sum, { measured }) => sum + measured, 0), '');
report('sets that a bound was run for', slices.reduce((sum, { bounded }) => sum + bounded, 0), '');
report('points of the front', front.points.length, '');
