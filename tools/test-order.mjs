// @ts-check
import { BaseSequencer } from 'vitest/node';

/** The files that take longest by far. Begun last, one of them would run alone while the other cores wait. */
const LONG = [
  'packages/calc/src/evaluate/fuzz.test.ts',
  'tests/authorization/matrix.test.ts',
  'tests/contract/badInput.test.ts',
];

/** @param {{ moduleId: string }} file */
function place({ moduleId }) {
  const at = LONG.findIndex((name) => moduleId.endsWith(name));
  return at < 0 ? LONG.length : at;
}

/** A fresh clone has no memory of how long a file took: these come first, the rest as ever. */
export class LongFirst extends BaseSequencer {
  /** @override @param {import('vitest/node').TestSpecification[]} files */
  async sort(files) {
    return (await super.sort(files)).sort((a, b) => place(a) - place(b));
  }
}
