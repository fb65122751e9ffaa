import * as contracts from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { keptHere } from './answers.ts';

/** Ids of every endpoint that the contracts export. */
function endpointIds(): Set<string> {
  const groups = Object.values(contracts as Record<string, unknown>).filter((value) => typeof value === 'object' && value !== null);
  return new Set(groups.flatMap((group) => Object.values(group as Record<string, unknown>)).flatMap((value) => (typeof value === 'object' && value !== null && 'fullPath' in value && 'id' in value ? [String(value.id)] : [])));
}

test('what a phone keeps is named by endpoints that exist', () => {
  const ids = endpointIds();
  expect(ids.size).toBeGreaterThan(80);
  expect([...keptHere].filter((id) => !ids.has(id))).toEqual([]);
});
