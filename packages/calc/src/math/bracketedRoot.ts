import { CalcProblem } from '../common/problem.ts';

const ITERATIONS = 200;

/**
 * Root of a continuous function between two points at which its sign differs
 * (false position with the Illinois step, and a bisection whenever that stalls).
 *
 * @param f    function
 * @param from one end
 * @param to   other end
 * @param tolerance width of the last bracket, in units of the argument
 * @returns x with f(x) = 0
 * Limits: throws root.notBracketed when f has one sign at both ends
 * Source: Dowell and Jarratt 1971, BIT 11, 168-174, from memory
 */
export function bracketedRoot(f: (x: number) => number, from: number, to: number, tolerance: number): number {
  let a = from;
  let b = to;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) throw new CalcProblem('root.notBracketed', '', { from, to });
  for (let i = 0; i < ITERATIONS && Math.abs(b - a) > tolerance; i += 1) {
    const secant = (a * fb - b * fa) / (fb - fa);
    const inside = secant > Math.min(a, b) && secant < Math.max(a, b);
    const x = i % 3 === 2 || !inside ? 0.5 * (a + b) : secant;
    const fx = f(x);
    if (fx === 0) return x;
    if (fx * fb < 0) {
      a = b;
      fa = fb;
    } else fa *= 0.5;
    b = x;
    fb = fx;
  }
  return b;
}
