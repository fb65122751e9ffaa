import type { DesignDocument } from '../src/document/document.ts';
import { exp } from '../src/math/exp.ts';
import { cbrt } from '../src/math/cbrt.ts';
import { routesOf } from '../src/routing/inflow.ts';
import { bareTables, find } from './bareTables.ts';

/**
 * The yard of Tern Hollow as one loop written by hand, to hold the general code against: the same losses, plane, gutters, tables and
 * implicit steps, but everything of this one yard in local numbers and nothing that could carry another.
 */
export interface BareResult {
  readonly highest: number;
  readonly solved: number;
  readonly closed: number;
  readonly gone: number;
}

const CELLS = 8;

/** @param rain depth of every five minutes [mm] */
export function bareLoop(document: DesignDocument, rain: Float64Array): BareResult {
  const { catchments } = document.site;
  const lawn = catchments.find(({ surface }) => surface === 'lawn')!;
  const quick = catchments.filter((item) => item !== lawn);
  const capacity = routesOf(document, 'system').filter((_, i) => catchments[i] !== lawn).map((route) => (route.pond >= 0 ? Infinity : route.capacity));
  const toPond = routesOf(document, 'system').filter((_, i) => catchments[i] !== lawn).map((route) => route.pond >= 0);
  const { pond, basin, link, bottom, pondVolume, basinVolume, pumped, over, linkFlow } = bareTables(document);
  const area = quick.map((item) => item.area);
  const share = quick.map((item) => item.coefficient);
  const room = quick.map((item) => item.depressionStorage);
  const kept = quick.map(() => 0);
  let lawnKept = 0;
  const fade = Float64Array.from({ length: 288 }, (_, n) => exp((-n * 300) / 28800));
  const dx = lawn.flowLength / CELLS;
  const width = lawn.area / lawn.flowLength;
  const alpha = Math.sqrt(lawn.slope) / lawn.roughness;
  const depth = new Float64Array(CELLS);
  const root = new Float64Array(CELLS);
  const minute = new Float64Array(5);
  let film = 0;
  let lastWet = -1;
  let volume = 0;
  let basinHeld = basinVolume(basin.onLevel);
  const onVolume = basinHeld;
  const pumpAtOn = pumped(basin.onLevel + 1e-12);
  const dryLimit = linkFlow(bottom, basin.onLevel) + pond.loss;
  let resting = true;
  let most = 0;
  let solved = 0;
  let closed = 0;
  let gone = 0;
  let level = bottom;
  let basinLevel = basin.onLevel;
  let goal = 0;
  let basinGoal = 0;
  let tail = 0;
  let inlet = 0;
  let spilled = 0;
  const pondBalance = (h: number): number => pondVolume(h) + 60 * (pond.loss + over(h, pond.rimLevel, pond.spillWidth) + linkFlow(h, tail)) - goal;
  const solvePond = (b: number): void => {
    tail = b;
    const atBottom = pondBalance(bottom);
    if (atBottom >= 0) {
      const could = pond.loss + linkFlow(bottom, b);
      const part = could > 0 ? Math.min(1, goal / 60 / could) : 0;
      inlet = linkFlow(bottom, b) * part;
      spilled = pond.loss * part;
      level = bottom;
      return;
    }
    level = find(pondBalance, bottom, atBottom, level);
    inlet = linkFlow(level, b);
    spilled = over(level, pond.rimLevel, pond.spillWidth) + pond.loss;
  };
  const leaves = (b: number): number => pumped(b) + over(b, basin.lidLevel, basin.lidEdge);
  const freeBalance = (b: number): number => basinVolume(b) + 60 * leaves(b) - basinGoal;
  const coupled = (b: number): number => {
    solvePond(b);
    return freeBalance(b) - 60 * inlet;
  };

  for (let i = 0; i < rain.length; i += 1) {
    const fallen = rain[i]!;
    if (fallen === 0 && film === 0 && resting && volume === 0) continue;
    let steady = 0;
    let lawnExcess = 0;
    if (fallen > 0) {
      const dry = i - lastWet - 1;
      if (dry > 0) {
        const left = dry >= 288 ? 0 : fade[dry]!;
        for (let c = 0; c < kept.length; c += 1) kept[c] = kept[c]! * left;
        lawnKept *= left;
      }
      lastWet = i;
      for (let c = 0; c < kept.length; c += 1) {
        const take = Math.min(room[c]! - kept[c]!, fallen);
        kept[c] = kept[c]! + take;
        const runoff = (((fallen - take) * share[c]!) / 1000 / 300) * area[c]!;
        if (toPond[c]!) steady += runoff;
        else {
          const carried = Math.min(runoff, capacity[c]!);
          steady += runoff - carried;
        }
      }
      const take = Math.min(lawn.depressionStorage - lawnKept, fallen);
      lawnKept += take;
      lawnExcess = ((fallen - take) * lawn.coefficient) / 1000 / 300;
    }
    if (lawnExcess === 0 && film <= 5e-5 * CELLS) {
      minute.fill((film * dx * width) / 300);
      depth.fill(0);
      root.fill(0);
      film = 0;
    } else {
      let crest = root[CELLS - 1]!;
      if (lawnExcess > 0) crest = cbrt(depth[CELLS - 1]! + lawnExcess * 300);
      const crossing = ((5 / 3) * alpha * crest * crest * 300) / dx;
      const parts = crossing <= 0.5 ? 1 : crossing <= 2.5 ? 5 : 15;
      const time = 300 / parts;
      const k = (alpha * time) / dx;
      const perMinute = Math.max(1, parts / 5);
      for (let m = 0; m < Math.min(parts, 5); m += 1) {
        let passed = 0;
        for (let p = 0; p < perMinute; p += 1) {
          let into = 0;
          film = 0;
          for (let c = 0; c < CELLS; c += 1) {
            const b = depth[c]! + lawnExcess * time + into;
            if (b <= 0) {
              into = 0;
              continue;
            }
            let u = root[c]! > 0 ? root[c]! : cbrt(b);
            for (let n = 0; n < 60; n += 1) {
              const square = u * u;
              const change = (square * u * (1 + k * square) - b) / (square * (3 + 5 * k * square));
              u -= change;
              if (Math.abs(change) < 1e-4 * u) break;
            }
            const left = Math.min(b, u * u * u);
            into = b - left;
            depth[c] = left;
            root[c] = u;
            film += left;
          }
          passed += into;
        }
        minute[m] = (passed * dx * width) / (perMinute * time);
      }
      if (parts === 1) minute.fill(minute[0]!);
    }
    for (let m = 0; m < 5; m += 1) {
      const inflow = steady + minute[m]!;
      if (resting && volume === 0 && inflow <= dryLimit && inflow <= pumpAtOn) {
        gone += 60 * inflow;
        closed += 1;
        continue;
      }
      solved += 1;
      goal = volume + 60 * inflow;
      basinGoal = basinHeld;
      solvePond(basin.onLevel);
      const more = basinGoal + 60 * inlet - onVolume;
      resting = more >= 0 && more <= 60 * pumpAtOn;
      if (resting) {
        gone += more;
        basinHeld = onVolume;
        basinLevel = basin.onLevel;
      } else {
        const atFree = coupled(link.freeLevel);
        if (atFree < 0) {
          basinLevel = find(coupled, link.freeLevel, atFree, Math.max(basinLevel, link.freeLevel));
          solvePond(basinLevel);
          basinGoal += 60 * inlet;
        } else {
          basinGoal += 60 * inlet;
          const atFloor = freeBalance(basin.storage.bottom);
          basinLevel = atFloor >= 0 ? basin.storage.bottom : find(freeBalance, basin.storage.bottom, atFloor, basinLevel);
        }
        basinHeld = basinGoal - 60 * leaves(basinLevel);
        gone += 60 * leaves(basinLevel);
      }
      gone += 60 * spilled;
      volume = Math.max(0, goal - 60 * (inlet + spilled));
      if (volume > most) most = volume;
    }
  }
  return { highest: pond.storage.level(most), solved, closed, gone };
}
