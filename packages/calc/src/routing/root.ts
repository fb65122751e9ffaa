/** Width of the last bracket on a level [m]; volumes are carried by the fluxes, so this never costs mass. */
export const levelTolerance = 1e-7;

/** A balance this close to nothing is met [m3]: a cubic millimetre. */
const volumeTolerance = 1e-9;

/**
 * Level at which a rising function passes through zero, searched first beside the last answer.
 * False position with the Illinois step and a bisection every third time.
 *
 * @param balance rising function of the level, negative at `low`
 * @param low     level at which `balance` is negative
 * @param guess   level to look near, usually the last answer
 */
export function risingRoot(balance: (level: number) => number, low: number, atLow: number, guess: number): number {
  let a = low;
  let fa = atLow;
  let step = 0.01;
  let b = guess > low + levelTolerance ? guess : low + step;
  let fb = balance(b);
  while (fb < 0) {
    a = b;
    fa = fb;
    step *= 2;
    b += step;
    fb = balance(b);
  }
  if (fb > 0 && b - a > 0.02) {
    const near = b - 0.005;
    const value = balance(near);
    if (value < 0) {
      a = near;
      fa = value;
    } else {
      b = near;
      fb = value;
    }
  }
  return refine(balance, a, fa, b, fb);
}

function refine(balance: (level: number) => number, from: number, atFrom: number, to: number, atTo: number): number {
  let a = from;
  let fa = atFrom;
  let b = to;
  let fb = atTo;
  let last = 0;
  for (let i = 1; i <= 200 && b - a > levelTolerance; i += 1) {
    let x = (a * fb - b * fa) / (fb - fa);
    if (i % 4 === 0 || !(x > a && x < b)) x = 0.5 * (a + b);
    const fx = balance(x);
    if (fx === 0) return x;
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
    if (fx < volumeTolerance && fx > -volumeTolerance) return x;
  }
  return 0.5 * (a + b);
}
