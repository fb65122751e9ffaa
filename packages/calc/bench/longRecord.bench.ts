import { readFileSync } from 'node:fs';
import { longRecord, LongRun, parseHourly, runToEnd } from '@yardfall/calc';
import type { DesignDocument, RainRecord, WayRun } from '@yardfall/calc';
import { bareLoop } from './bareLoop.ts';
import { report, timed } from './measure.ts';
import { syntheticRain } from './syntheticRain.ts';

const demo = JSON.parse(readFileSync(new URL('../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const YEARS = 30;

/** Processor time of some rounds [ms], the middle one: on a busy machine the clock tells of the others too. */
function processorTime(run: () => void, rounds = 9): number {
  const times = Array.from({ length: rounds }, () => {
    const start = process.cpuUsage();
    run();
    return process.cpuUsage(start).user / 1000;
  }).sort((a, b) => a - b);
  return times[Math.floor(rounds / 2)] ?? 0;
}

function withSystem(record: RainRecord): readonly WayRun[] {
  return runToEnd(new LongRun(demo, record, { cases: ['system'] }));
}

const rain = syntheticRain(YEARS);
const run = withSystem(rain)[0]?.cases[0];
const bare = bareLoop(demo, rain.depths);
const highest = Math.max(...(run?.years ?? []).map(([part]) => part?.maxLevel ?? 0));
report('readings', rain.depths.length, '5 min');
report('wet readings', rain.depths.reduce((sum, depth) => sum + (depth > 0 ? 1 : 0), 0), '5 min');
report('minutes solved, general code', run?.books.solved ?? 0, 'min');
report('minutes solved, bare loop', bare.solved, 'min');
report('minutes in closed form while water moves, general code', run?.books.closed ?? 0, 'min');
report('minutes in closed form while water moves, bare loop', bare.closed, 'min');
report('highest level, difference to the bare loop', Math.abs(highest - bare.highest) * 1000, 'mm', 0.01);
report('mass error', run?.massError ?? 1, '-', 1e-9);

const general = timed(() => { withSystem(rain); }, 9);
const byHand = timed(() => { bareLoop(demo, rain.depths); }, 9);
report(`${YEARS} years of 5-minute rain, demo system`, general.median, 'ms', 500);
report(`${YEARS} years of 5-minute rain, demo system, best`, general.best, 'ms', 500);
report('the same in a bare loop', byHand.median, 'ms');
const [ours, theirs] = [processorTime(() => { withSystem(rain); }), processorTime(() => { bareLoop(demo, rain.depths); })];
report(`${YEARS} years of 5-minute rain, demo system, processor time`, ours, 'ms', 500);
report('the same in a bare loop, processor time', theirs, 'ms');
report('general code against the bare loop, processor time', ours / theirs, '-', 2);
report('general code against the bare loop', general.median / byHand.median, '-', 2);
report('general code against the bare loop, best of each', general.best / byHand.best, '-', 2);

report(`${YEARS} years with and without system, all answers`, timed(() => { longRecord(demo, rain); }, 3).median, 'ms');
const station = parseHourly(readFileSync(new URL('../fixtures/record/hourlyBeltsville.csv', import.meta.url), 'utf8'));
report('15 years of hourly rain, two ways, with and without', timed(() => { longRecord(demo, station); }, 3).median, 'ms');

let first = 0;
for (const times of [1, 4, 16]) {
  const part = syntheticRain(2 * times);
  const { median } = timed(() => { withSystem(part); }, times === 16 ? 5 : 9);
  if (times === 1) first = median;
  report(`record length ${times}x (${2 * times} years)`, median, 'ms');
  if (times > 1) report(`record length ${times}x: cost per work against 1x`, median / first / times, '-', 1.5);
}
