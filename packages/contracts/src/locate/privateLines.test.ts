import { expect, test } from 'vitest';
import { privateLineKinds, privateLineSteps, privateLineWarnings } from './privateLines.ts';

const none = privateLineKinds.map((question) => ({ question, state: 'no' as const }));

test('what nobody declared is warned of, line by line', () => {
  expect(privateLineWarnings([])).toEqual(privateLineKinds.map((kind) => ({ kind, why: 'unknown' })));
  expect(privateLineWarnings(none)).toEqual([]);
  expect(privateLineWarnings([...none.filter(({ question }) => question !== 'septic'), { question: 'septic', state: 'unknown' }])).toEqual([{ kind: 'septic', why: 'unknown' }]);
});
test('a line that is there is shown, and said to be found only when somebody located it', () => {
  const pool = [...none.filter(({ question }) => question !== 'pool'), { question: 'pool' as const, state: 'yes' as const }];
  expect(privateLineWarnings(pool)).toEqual([{ kind: 'pool', why: 'notLocated' }]);
  expect(privateLineWarnings([...pool, { question: 'locator', state: 'no' }])).toEqual([{ kind: 'pool', why: 'notLocated' }]);
  expect(privateLineWarnings([...pool, { question: 'locator', state: 'yes' }])).toEqual([{ kind: 'pool', why: 'located' }]);
  // A locator finds what was looked for; what nobody declared stays unknown.
  expect(privateLineWarnings([{ question: 'locator', state: 'yes' }])).toHaveLength(privateLineKinds.length);
});
test('the crew is warned at every step that HP-1 guards', () => expect([...privateLineSteps]).toEqual(['A2', 'B5', 'C1', 'C2', 'C3', 'C4', 'C5', 'C6', 'C7', 'C8', 'A3']));
