import { readFileSync } from 'node:fs';
import { optionsFront, sizeChoice, type CostIndex, type DesignDocument } from '@yardfall/calc';
import { describe, expect, test, vi } from 'vitest';
import { answerOptions, type OptionsAnswer, type OptionsRequest } from './optionsAnswer.ts';
import { searchOptions, type OptionsPort, type OptionsState } from './optionsSearch.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

const document = JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const sizes = [['small', 0.035], ['large', 0.0525]] as const;
const choices = [sizeChoice('line', 'N1', sizes.map(([id, innerDiameter]) => ({ id, name: id, fields: { innerDiameter } })))];
const cost: CostIndex = { base: 1, alternatives: { N1: { small: 0, large: 2 } } };

/** The worker's own code on this thread; messages arrive later, as they do from a worker. */
function port(ended: number[], index: number): OptionsPort {
  const made: OptionsPort = {
    onmessage: null,
    terminate: () => { ended.push(index); },
    postMessage: (request: OptionsRequest) => {
      const tell = (data: OptionsAnswer): void => { made.onmessage?.call(made as Worker, { data } as MessageEvent<OptionsAnswer>); };
      setTimeout(() => answerOptions(request, tell), 0);
    },
  };
  return made;
}

const finished = (asked: CostIndex): Promise<{ readonly states: OptionsState[]; readonly ended: number[] }> => new Promise((resolve) => {
  const states: OptionsState[] = [];
  const ended: number[] = [];
  let opened = 0;
  searchOptions({ document, choices, cost: asked }, (state) => {
    states.push(state);
    if (state.progress === null) setTimeout(() => resolve({ states, ended }), 0);
  }, 2, () => port(ended, opened++));
});

describe('search of options in workers', () => {
  test('two workers give the front of one, tell their progress and end', async () => {
    const { states, ended } = await finished(cost);
    expect(states.at(-1)?.front).toEqual(optionsFront(document, choices, cost));
    expect(states.filter(({ progress }) => progress !== null).length).toBeGreaterThan(0);
    expect(ended).toEqual([0, 1]);
  });

  test('a cost that is missing is told by its code', async () => {
    const { states } = await finished({ base: 0, alternatives: {} });
    expect(states.at(-1)).toEqual({ front: null, progress: null, problem: 'options.noCost' });
  });
});
