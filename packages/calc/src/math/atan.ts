/*
 * Port of s_atan.c of fdlibm, with atan2, acos and asin built on it.
 * Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
import { PI } from './constants.ts';

const ATAN_HIGH = [4.63647609000806093515e-1, 7.85398163397448278999e-1, 9.82793723247329054082e-1, 1.57079632679489655800] as const;
const ATAN_LOW = [2.26987774529616870924e-17, 3.06161699786838301793e-17, 1.39033110312309984516e-17, 6.12323399573676603587e-17] as const;
const EVEN = [3.33333333333329318027e-1, 1.42857142725034663711e-1, 9.09088713343650656196e-2, 6.66107313738753120669e-2, 4.97687799461593236017e-2, 1.62858201153657823623e-2] as const;
const ODD = [-1.99999999998764832476e-1, -1.11111104054623557880e-1, -7.69187620504482999495e-2, -5.83357013379057348645e-2, -3.65315727442169155270e-2] as const;

/** Arc tangent [rad]. */
export function atan(x: number): number {
  if (Number.isNaN(x)) return x;
  if (x < 0) return -atan(-x);
  if (x > 1e18) return ATAN_HIGH[3] + ATAN_LOW[3];
  let t = x;
  let id: 0 | 1 | 2 | 3 | null = null;
  if (x >= 2.4375) [t, id] = [-1 / x, 3];
  else if (x >= 1.1875) [t, id] = [(x - 1.5) / (1 + 1.5 * x), 2];
  else if (x >= 0.6875) [t, id] = [(x - 1) / (x + 1), 1];
  else if (x >= 0.4375) [t, id] = [(2 * x - 1) / (2 + x), 0];
  const z = t * t;
  const w = z * z;
  const even = z * (EVEN[0] + w * (EVEN[1] + w * (EVEN[2] + w * (EVEN[3] + w * (EVEN[4] + w * EVEN[5])))));
  const odd = w * (ODD[0] + w * (ODD[1] + w * (ODD[2] + w * (ODD[3] + w * ODD[4]))));
  if (id === null) return t - t * (even + odd);
  return ATAN_HIGH[id] - (t * (even + odd) - ATAN_LOW[id] - t);
}

/** Angle of the point (x, y) from the x axis [rad], -PI to PI. */
export function atan2(y: number, x: number): number {
  if (x === 0 && y === 0) return 0;
  if (x > 0) return atan(y / x);
  if (x === 0) return y > 0 ? PI / 2 : -PI / 2;
  return y >= 0 ? atan(y / x) + PI : atan(y / x) - PI;
}

/** Arc cosine [rad] for -1 <= x <= 1, NaN outside. */
export function acos(x: number): number {
  if (!(x >= -1 && x <= 1)) return NaN;
  return 2 * atan2(Math.sqrt(1 - x), Math.sqrt(1 + x));
}
