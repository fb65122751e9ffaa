/*
 * Port of k_sin.c and k_cos.c of fdlibm, with the pi/2 of e_rem_pio2.c in three parts.
 * Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted,
 * provided that this notice is preserved.
 */
const PIO2_1 = 1.57079632673412561417;
const PIO2_2 = 6.07710050630396597660e-11;
const PIO2_2T = 2.02226624879595063154e-21;
const INVERSE_PIO2 = 6.36619772367581382433e-1;
/** Angles here are those of a pipe section; beyond this the three-part reduction loses digits. */
const LARGEST_ANGLE = 1e5;

function sinKernel(x: number, y: number): number {
  const z = x * x;
  const v = z * x;
  const r = 8.33333333332248946124e-3 + z * (-1.98412698298579493134e-4 + z * (2.75573137070700676789e-6 + z * (-2.50507602534068634195e-8 + z * 1.58969099521155010221e-10)));
  return x - (z * (0.5 * y - v * r) - y - v * -1.66666666666666324348e-1);
}

function cosKernel(x: number, y: number): number {
  const z = x * x;
  const r = z * (4.16666666666666019037e-2 + z * (-1.38888888888741095749e-3 + z * (2.48015872894767294178e-5 + z * (-2.75573143513906633035e-7 + z * (2.08757232129817482790e-9 + z * -1.13596475577881948265e-11)))));
  const half = 0.5 * z;
  const w = 1 - half;
  return w + (1 - w - half + (z * r - x * y));
}

function quarterTurns(x: number): { quadrant: number; high: number; low: number } {
  const n = Math.floor(x * INVERSE_PIO2 + 0.5);
  const r = x - n * PIO2_1;
  const w = n * PIO2_2;
  const first = r - w;
  const tail = n * PIO2_2T - (r - first - w);
  const high = first - tail;
  return { quadrant: ((n % 4) + 4) % 4, high, low: first - high - tail };
}

/** Sine of an angle [rad], |x| <= 1e5; NaN beyond. */
export function sin(x: number): number {
  if (!(Math.abs(x) <= LARGEST_ANGLE)) return NaN;
  const { quadrant, high, low } = quarterTurns(x);
  if (quadrant === 0) return sinKernel(high, low);
  if (quadrant === 1) return cosKernel(high, low);
  return quadrant === 2 ? -sinKernel(high, low) : -cosKernel(high, low);
}

/** Cosine of an angle [rad], |x| <= 1e5; NaN beyond. */
export function cos(x: number): number {
  if (!(Math.abs(x) <= LARGEST_ANGLE)) return NaN;
  const { quadrant, high, low } = quarterTurns(x);
  if (quadrant === 0) return cosKernel(high, low);
  if (quadrant === 1) return -sinKernel(high, low);
  return quadrant === 2 ? -cosKernel(high, low) : sinKernel(high, low);
}
