import { expect, test } from 'vitest';
import { hazardsAt } from './cautions.ts';

test('gas is told of first wherever a hole or trench is dug', () => {
  for (const step of ['C3', 'C4', 'C6', 'G1', 'G4']) expect(hazardsAt(step), step).toContain('gasStrike');
  for (const step of ['C3', 'C6', 'G1', 'G4']) expect(hazardsAt(step)[0], step).toBe('gasStrike');
});

test('the pump for the night is told of where a hole is left open, not only when the truck is loaded', () => {
  for (const step of ['A6', 'C5', 'G1', 'G4']) expect(hazardsAt(step), step).toContain('storm');
});
