/*
 * Port of e_pow.c of fdlibm for a base that is zero or positive.
 * Copyright (C) 2004 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { clearLow, fromWords, highWord, lowWord, scaleByPowerOfTwo } from './bits.ts';

const TWO_53 = 9007199254740992;
const L1 = 5.99999999999994648725e-1;
const L2 = 4.28571428578550184252e-1;
const L3 = 3.33333329818377432918e-1;
const L4 = 2.72728123808534006489e-1;
const L5 = 2.30660745775561754067e-1;
const L6 = 2.06975017800338417784e-1;
const P1 = 1.66666666666666019037e-1;
const P2 = -2.77777777770155933842e-3;
const P3 = 6.61375632143793436117e-5;
const P4 = -1.65339022054652515390e-6;
const P5 = 4.13813679705723846039e-8;
const LN2 = 6.93147180559945286227e-1;
const LN2_HIGH = 6.93147182464599609375e-1;
const LN2_LOW = -1.90465429995776804525e-9;
const CP = 9.61796693925975554329e-1;
const CP_HIGH = 9.61796700954437255859e-1;
const CP_LOW = -7.02846165095275826516e-9;
const DP_HIGH = 5.84962487220764160156e-1;
const DP_LOW = 1.35003920212974897128e-8;

// log2(x) as a sum of two doubles; module variables because the hot loops must not allocate.
let logHigh = 0;
let logLow = 0;

function splitLog2(x: number): void {
  let n = 0;
  let ax = x;
  if (highWord(ax) < 0x00100000) {
    ax *= TWO_53;
    n -= 53;
  }
  const word = highWord(ax);
  n += (word >> 20) - 0x3ff;
  const j = word & 0x000fffff;
  let ix = j | 0x3ff00000;
  let k = 0;
  if (j > 0x3988e) {
    if (j < 0xbb67a) k = 1;
    else {
      n += 1;
      ix -= 0x00100000;
    }
  }
  ax = fromWords(ix, lowWord(ax));
  const base = k === 0 ? 1 : 1.5;
  const u = ax - base;
  const v = 1 / (ax + base);
  const s = u * v;
  const sHigh = clearLow(s);
  const tHigh0 = fromWords(((ix >> 1) | 0x20000000) + 0x00080000 + (k << 18), 0);
  const tLow0 = ax - (tHigh0 - base);
  const sLow = v * (u - sHigh * tHigh0 - sHigh * tLow0);
  const s2 = s * s;
  const r = s2 * s2 * (L1 + s2 * (L2 + s2 * (L3 + s2 * (L4 + s2 * (L5 + s2 * L6))))) + sLow * (sHigh + s);
  combineLog2(s, sHigh, sLow, r, n, k);
}

function combineLog2(s: number, sHigh: number, sLow: number, r: number, n: number, k: number): void {
  const square = sHigh * sHigh;
  const tHigh = clearLow(3 + square + r);
  const tLow = r - (tHigh - 3 - square);
  const u = sHigh * tHigh;
  const v = sLow * tHigh + tLow * s;
  const pHigh = clearLow(u + v);
  const pLow = v - (pHigh - u);
  const zHigh = CP_HIGH * pHigh;
  const dHigh = k === 0 ? 0 : DP_HIGH;
  const zLow = CP_LOW * pHigh + pLow * CP + (k === 0 ? 0 : DP_LOW);
  logHigh = clearLow(zHigh + zLow + dHigh + n);
  logLow = zLow - (logHigh - n - dHigh - zHigh);
}

function exp2OfSum(high: number, low: number): number {
  const sum = high + low;
  if (sum >= 1024) return Infinity;
  if (sum < -1080) return 0;
  const n = Math.floor(sum + 0.5);
  const pHigh = high - n;
  const t = clearLow(low + pHigh);
  const u = t * LN2_HIGH;
  const v = (low - (t - pHigh)) * LN2 + t * LN2_LOW;
  const z = u + v;
  const w = v - (z - u);
  const z2 = z * z;
  const c = z - z2 * (P1 + z2 * (P2 + z2 * (P3 + z2 * (P4 + z2 * P5))));
  const r = (z * c) / (c - 2) - (w + z * w);
  return scaleByPowerOfTwo(1 - (r - z), n);
}

/** x^y for x >= 0, the same bits on every engine; NaN for a negative base. */
export function pow(x: number, y: number): number {
  if (y === 0 || x === 1) return 1;
  if (Number.isNaN(x) || Number.isNaN(y) || x < 0) return NaN;
  if (x === 0) return y > 0 ? 0 : Infinity;
  if (x === Infinity) return y > 0 ? Infinity : 0;
  if (!Number.isFinite(y)) return x > 1 === y > 0 ? Infinity : 0;
  splitLog2(x);
  const yHigh = clearLow(y);
  const pLow = (y - yHigh) * logHigh + y * logLow;
  return exp2OfSum(yHigh * logHigh, pLow);
}
