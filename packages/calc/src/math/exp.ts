/*
 * Port of e_exp.c of fdlibm.
 * Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { scaleByPowerOfTwo } from './bits.ts';

const OVERFLOW = 7.09782712893383973096e2;
const UNDERFLOW = -7.45133219101941108420e2;
const LN2_HIGH = 6.93147180369123816490e-1;
const LN2_LOW = 1.90821492927058770002e-10;
const INVERSE_LN2 = 1.44269504088896338700;
const P1 = 1.66666666666666019037e-1;
const P2 = -2.77777777770155933842e-3;
const P3 = 6.61375632143793436117e-5;
const P4 = -1.65339022054652515390e-6;
const P5 = 4.13813679705723846039e-8;

/** e^x, the same bits on every engine. */
export function exp(x: number): number {
  if (Number.isNaN(x)) return x;
  if (x > OVERFLOW) return Infinity;
  if (x < UNDERFLOW) return 0;
  const k = Math.abs(x) > 0.5 * 0.6931471805599453 ? Math.floor(INVERSE_LN2 * x + 0.5) : 0;
  const high = x - k * LN2_HIGH;
  const low = k * LN2_LOW;
  const r = high - low;
  const t = r * r;
  const c = r - t * (P1 + t * (P2 + t * (P3 + t * (P4 + t * P5))));
  if (k === 0) return 1 - ((r * c) / (c - 2) - r);
  const y = 1 - (low - (r * c) / (2 - c) - high);
  return scaleByPowerOfTwo(y, k);
}
