/*
 * Port of s_cbrt.c of fdlibm for numbers of zero or more.
 * Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { fromWords, highWord } from './bits.ts';

const THIRD_OF_BIAS = 715094163;
const C = 5.42857142857142815906e-1;
const D = -7.05306122448979611050e-1;
const E = 1.41428571428571436819;
const F = 1.60714285714285720630;
const G = 3.57142857142857150787e-1;
const TWO_54 = 18014398509481984;
const CUBE_ROOT_OF_TWO_54 = 262144;

/** Cube root, quicker than a power, the same bits on every engine; NaN below zero. */
export function cbrt(x: number): number {
  if (!(x > 0)) return x === 0 ? 0 : NaN;
  if (x === Infinity) return x;
  const high = highWord(x);
  if (high < 0x00100000) return cbrt(x * TWO_54) / CUBE_ROOT_OF_TWO_54;
  let t = fromWords(Math.floor(high / 3) + THIRD_OF_BIAS, 0);
  let r = (t * t) / x;
  let s = C + r * t;
  t *= G + F / (s + E + D / s);
  t = fromWords(highWord(t) + 1, 0);
  s = t * t;
  r = x / s;
  r = (r - t) / (t + t + r);
  return t + t * r;
}
