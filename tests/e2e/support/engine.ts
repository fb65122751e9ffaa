// What the browser gets of the engine in sameNumbers.spec.ts.
export { evaluate } from '../../../packages/calc/src/evaluate/evaluate.ts';
export { canonicalText } from '../../../packages/calc/src/testing/canonical.ts';
