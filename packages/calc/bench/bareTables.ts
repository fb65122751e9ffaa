import type { DesignDocument } from '../src/document/document.ts';
import { buildModel } from '../src/routing/buildModel.ts';

/** Root of a rising balance, the same search as in the router. */
export function find(balance: (x: number) => number, low: number, atLow: number, guess: number): number {
  let a = low;
  let fa = atLow;
  let step = 0.01;
  let b = guess > low + 1e-7 ? guess : low + step;
  let fb = balance(b);
  while (fb < 0) {
    a = b;
    fa = fb;
    step *= 2;
    b += step;
    fb = balance(b);
  }
  let last = 0;
  for (let i = 1; i <= 200 && b - a > 1e-7; i += 1) {
    let x = (a * fb - b * fa) / (fb - fa);
    if (i % 4 === 0 || !(x > a && x < b)) x = 0.5 * (a + b);
    const fx = balance(x);
    if (Math.abs(fx) < 1e-9) return x;
    if (fx < 0) {
      a = x;
      fa = fx;
      if (last < 0) fb *= 0.5;
      last = -1;
    } else {
      b = x;
      fb = fx;
      if (last > 0) fa *= 0.5;
      last = 1;
    }
  }
  return 0.5 * (a + b);
}

/** Tables and flows of one yard with one low spot, one channel and one basin, as plain numbers and plain functions. */
export function bareTables(document: DesignDocument) {
  const model = buildModel(document);
  const pond = model.ponds[0]!;
  const basin = model.basins[0]!;
  const link = model.links[0]!;
  const tableOf = (bottom: number, top: number, cells: number, at: (level: number) => number): Float64Array =>
    Float64Array.from({ length: cells + 1 }, (_, i) => at(bottom + ((top - bottom) * i) / cells));
  const pondCells = 600;
  const basinCells = 400;
  const pumpCells = 96;
  const pondTable = tableOf(pond.storage.bottom, pond.storage.top, pondCells, (level) => pond.storage.volume(level));
  const basinTable = tableOf(basin.storage.bottom, basin.storage.top, basinCells, (level) => basin.storage.volume(level));
  const flow = basin.pump!.flow;
  const pumpTable = tableOf(flow.bottom, flow.top, pumpCells, (level) => flow.flow(level));
  const bottom = pond.storage.bottom;
  const pondScale = pondCells / (pond.storage.top - bottom);
  const basinScale = basinCells / (basin.storage.top - basin.storage.bottom);
  const pumpScale = pumpCells / (flow.top - flow.bottom);
  const lookup = (table: Float64Array, x: number, cells: number): number => {
    if (x <= 0) return table[0]!;
    const i = x >= cells ? cells - 1 : Math.floor(x);
    return table[i]! + (table[i + 1]! - table[i]!) * (x - i);
  };
  const pondVolume = (h: number): number => lookup(pondTable, (h - bottom) * pondScale, pondCells);
  const basinVolume = (b: number): number => lookup(basinTable, (b - basin.storage.bottom) * basinScale, basinCells);
  const pumped = (b: number): number => (b <= basin.onLevel ? 0 : lookup(pumpTable, Math.min(pumpCells, (b - flow.bottom) * pumpScale), pumpCells));
  const over = (level: number, crest: number, width: number): number => (level > crest ? 1.6564 * width * (level - crest) * Math.sqrt(level - crest) : 0);
  const conveyance = 1 / Math.sqrt(link.resistance);
  const chord = 1 / Math.sqrt(0.002);
  const rootOf = (head: number): number => (head >= 0.002 ? Math.sqrt(head) : head * chord);
  const linkFlow = (h: number, b: number): number => {
    const tail = b > link.freeLevel ? b : link.freeLevel;
    const up = h > link.grateLevel ? h : link.grateLevel;
    if (tail >= up) return b > link.freeLevel ? -rootOf(tail - up) * conveyance : 0;
    const head = h - link.grateLevel;
    if (head <= 0) return 0;
    const weir = link.grateWeir * head * Math.sqrt(head);
    const orifice = link.grateOrifice * rootOf(head);
    const mouth = link.mouthOrifice === null ? Infinity : h > link.mouthLevel ? link.mouthOrifice * rootOf(h - link.mouthLevel) : 0;
    const full = rootOf(h - tail) * conveyance;
    return Math.min(weir, orifice, mouth, full);
  };
  return { pond, basin, link, bottom, pondVolume, basinVolume, pumped, over, linkFlow };
}
