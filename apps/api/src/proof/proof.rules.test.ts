import { readFileSync } from 'node:fs';
import { commissioningFlow, type DesignDocument } from '@yardfall/calc';
import { describe, expect, it } from 'vitest';
import { InvalidRuns, judgeRuns, settles } from './proof.rules.ts';

const file = new URL('../../../../prisma/seed/sites/tern-hollow.json', import.meta.url);
const document = JSON.parse(readFileSync(file, 'utf8')) as DesignDocument;
const [upperLevel, lowerLevel] = [29.7, 29.446];
const predicted = commissioningFlow(document, 'M1', (upperLevel + lowerLevel) / 2).netFlow;
const run = (share: number, changes = {}) => ({ upperLevel, lowerLevel, volume: 0.116, seconds: 0.116 / (predicted * share), emptyLine: false, ...changes });
const verdict = (...runs: ReturnType<typeof run>[]) => judgeRuns(document, 'M1', runs).verdict;

describe('three pump-downs', () => {
  it('pass within 10 %, are explained within 20 %, fail beyond (ours)', () => {
    expect([0.91, 1.09, 0.89, 1.19, 0.79].map((share) => verdict(run(share), run(share), run(share)))).toEqual(['pass', 'pass', 'explain', 'explain', 'fail']);
  });
  it('are repeated when one is missing, when the line was empty, or over too small a drop', () => {
    const short = { lowerLevel: upperLevel - 0.05, volume: 0.0228, seconds: 0.0228 / predicted };
    expect([verdict(run(1), run(1)), verdict(run(1), run(1), run(1, { emptyLine: true })), verdict(run(1, short), run(1, short), run(1, short))]).toEqual(['repeat', 'repeat', 'repeat']);
  });
  it.each([['levels the wrong way round', [run(1, { lowerLevel: upperLevel + 0.1 })], 'levels'], ['no run with a full line', [run(1, { emptyLine: true })], 'noRuns'], ['no run', [], 'noRuns']])('%s cannot be', (_, runs, reason) => {
    expect(() => judgeRuns(document, 'M1', runs)).toThrow(InvalidRuns);
    expect(() => judgeRuns(document, 'M1', runs)).toThrow(reason);
  });
  it('settle when they pass, or are explained in words', () => {
    expect([settles({ verdict: 'pass', note: '' }), settles({ verdict: 'explain', note: '' }), settles({ verdict: 'explain', note: 'cold water' }), settles({ verdict: 'fail', note: 'x' }), settles({ verdict: 'repeat', note: 'x' })])
      .toEqual([true, false, true, false, false]);
  });
});
