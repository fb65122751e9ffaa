import { createRequire } from 'node:module';

interface Solver {
  absoluteTolerance: number;
  relativeTolerance: number;
  solve(f: (x: number, y: number[]) => number[], from: number, y: number[], to: number): { y: number[]; outcome: number };
}
const { Solver: OdexSolver } = createRequire(import.meta.url)('odex') as { Solver: new (n: number) => Solver };

const tolerance = 1e-9;

/**
 * State after a span of time, by the extrapolated midpoint rule (Gragg, Bulirsch, Stoer) of the package odex.
 * Source: Hairer, Norsett and Wanner 1993, Solving Ordinary Differential Equations I, program ODEX
 */
export function integrate(slope: (t: number, y: number[]) => number[], t: number, y: readonly number[], dt: number): number[] {
  const solver = new OdexSolver(y.length);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  const { y: end, outcome } = solver.solve(slope, t, [...y], t + dt);
  if (outcome !== 0) throw new Error(`the solver does not converge at ${t} s`);
  return end;
}
