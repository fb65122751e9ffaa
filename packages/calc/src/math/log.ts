/*
 * Port of e_log.c of fdlibm.
 * Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { fromWords, highWord, lowWord } from './bits.ts';

const LN2_HIGH = 6.93147180369123816490e-1;
const LN2_LOW = 1.90821492927058770002e-10;
const TWO_54 = 18014398509481984;
const LG1 = 6.666666666666735130e-1;
const LG2 = 3.999999999940941908e-1;
const LG3 = 2.857142874366239149e-1;
const LG4 = 2.222219843214978396e-1;
const LG5 = 1.818357216161805012e-1;
const LG6 = 1.531383769920937332e-1;
const LG7 = 1.479819860511658591e-1;

/** Natural logarithm, the same bits on every engine. */
export function log(x: number): number {
  if (Number.isNaN(x) || x < 0) return NaN;
  if (x === 0) return -Infinity;
  if (x === Infinity) return x;
  let k = 0;
  let value = x;
  if (highWord(value) < 0x00100000) {
    k -= 54;
    value *= TWO_54;
  }
  let high = highWord(value);
  k += (high >> 20) - 1023;
  high &= 0x000fffff;
  const i = (high + 0x95f64) & 0x100000;
  value = fromWords(high | (i ^ 0x3ff00000), lowWord(value));
  k += i >> 20;
  const f = value - 1;
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const odd = w * (LG2 + w * (LG4 + w * LG6));
  const even = z * (LG1 + w * (LG3 + w * (LG5 + w * LG7)));
  const halfSquare = 0.5 * f * f;
  return k * LN2_HIGH - (halfSquare - (s * (halfSquare + odd + even) + k * LN2_LOW) - f);
}
