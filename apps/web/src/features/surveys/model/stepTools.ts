import { designInfiltration, hoseCalibration, hoseTest, type DesignInfiltration, type HoleReading, type HoseFlow } from '@yardfall/calc';

/** Figures of a step in SI by name; a row of a list has its number behind the name. */
export type Figures = Readonly<Record<string, number>>;

const GALLON = 0.003785411784;
const INCH = 0.0254;
const FOOT = 0.3048;
export const usualBucket = 5 * GALLON;
export const usualDrain = 4 * INCH;
export const usualHole = 6 * INCH;

/** Figures `name1`, `name2`, ... in their order. */
export function listOf(figures: Figures, name: string): number[] {
  const list: number[] = [];
  for (let n = 1; ; n += 1) {
    const value = figures[`${name}${String(n)}`];
    if (value === undefined) return list;
    list.push(value);
  }
}

export function withNext(figures: Figures, row: Figures): Figures {
  const n = String(listOf(figures, Object.keys(row)[0] ?? '').length + 1);
  return { ...figures, ...Object.fromEntries(Object.entries(row).map(([name, value]) => [name + n, value])) };
}

export function hoseOf(figures: Figures): HoseFlow | null {
  return hoseCalibration(figures['bucket'] ?? usualBucket, listOf(figures, 'fill'));
}

/** What is kept of a hose measurement: the fills and what they come to. */
export function hoseFigures(figures: Figures): Figures {
  const hose = hoseOf(figures);
  return hose === null ? figures : { bucket: usualBucket, ...figures, flow: hose.flow, spread: hose.spread };
}

/** What an old drain took before it backed up; nothing without a hose flow or a time. */
export function drainFigures(figures: Figures, hoseFlow: number | null): Figures {
  const { seconds, diameter = usualDrain } = figures;
  if (hoseFlow === null || seconds === undefined || seconds <= 0) return { ...figures, diameter };
  return { ...figures, diameter, flow: hoseFlow, ...hoseTest(hoseFlow, seconds, diameter) };
}

function readingsOf(figures: Figures): HoleReading[] {
  const [intervals, starts, drops] = [listOf(figures, 'interval'), listOf(figures, 'start'), listOf(figures, 'drop')];
  return intervals.flatMap((interval, n) => {
    const [startDepth = 0, drop = 0] = [starts[n], drops[n]];
    return interval > 0 && drop > 0 && startDepth > drop / 2 ? [{ interval, startDepth, drop }] : [];
  });
}

export function percolationOf(figures: Figures): DesignInfiltration | null {
  return designInfiltration((figures['hole'] ?? usualHole) / 2, readingsOf(figures));
}

export function percolationFigures(figures: Figures): Figures {
  const result = percolationOf(figures);
  return result === null ? figures : { hole: usualHole, ...figures, measured: result.measured, design: result.design, settled: result.settled ? 1 : 0 };
}

/** One hole for each 10 ft of cut, two at least. Source: common practice, no source. */
export function slabHolesWanted(cut: number): number {
  return Math.max(2, Math.ceil(cut / (10 * FOOT) - 1e-9));
}
