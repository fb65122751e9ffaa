import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { describe, expect, test } from 'vitest';
import { applyOperations } from './operations.ts';
import { readDesignDocument } from './parse.ts';
import { proposedEdit, type FoundMeasure } from './proposal.ts';

const site = JSON.parse(readFileSync(new URL('../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const [cut] = site.construction.slabCuts;
const channel = site.system.parts.find((part) => part.kind === 'channel');
const pipe = site.system.parts.find((part) => part.kind === 'pipe');
if (cut === undefined || channel?.kind !== 'channel' || pipe?.kind !== 'pipe') throw new Error('the site has a cut, a channel and a pipe');

const found = (kind: FoundMeasure['kind'], part: string | null, measure: number | null): FoundMeasure => ({ id: '01234567-89ab-7def-8123-456789abcdef', kind, part, measure });
const edit = (of: FoundMeasure) => proposedEdit(site, of, 'A pipe in the way');

describe('what the crew found, as an edit', () => {
  test('a thicker slab changes the cut of its part, by the cut or by the part, and the only cut where no part was named', () => {
    const wanted = { kind: 'replace', path: ['construction', 'slabCuts', `@${cut.id}`, 'thickness'], value: 0.216 };
    expect(edit(found('thickerSlab', cut.part, 0.216))).toEqual(wanted);
    expect(edit(found('thickerSlab', cut.id, 0.216))).toEqual(wanted);
    expect(edit(found('thickerSlab', null, 0.216))).toEqual(site.construction.slabCuts.length === 1 ? wanted : null);
    expect(edit(found('thickerSlab', cut.part, cut.thickness))).toBeNull();
    expect(edit(found('thickerSlab', cut.part, null))).toBeNull();
    expect(edit(found('thickerSlab', 'nowhere', 0.216))).toBeNull();
  });

  test('a pipe in the way lies at its depth under the grate, beside the lines that were known', async () => {
    const operation = edit(found('pipeInTheWay', channel.id, 0.1));
    if (operation?.kind !== 'add') throw new Error('nothing is added');
    expect(operation.value).toMatchObject({ id: 'Fabcdef', name: 'A pipe in the way', level: channel.grateLevel - 0.1, station: site.site.lowSpots.find(({ id }) => id === channel.lowSpot)?.station });
    const after = applyOperations(site, [operation]);
    expect((await readDesignDocument(after)).document.site.utilities).toHaveLength(site.site.utilities.length + 1);
    // It is proposed once: what is in the document is not added again.
    expect(proposedEdit(after, found('pipeInTheWay', channel.id, 0.1), 'A pipe in the way')).toBeNull();
  });

  test('another invert is that of the two ends which the measured level is nearer to', () => {
    const path = (field: string) => ['system', 'parts', `@${pipe.id}`, field];
    expect(edit(found('other', pipe.id, pipe.invertDown - 0.02))).toEqual({ kind: 'replace', path: path('invertDown'), value: pipe.invertDown - 0.02 });
    expect(edit(found('other', pipe.id, pipe.invertUp + 0.02))).toEqual({ kind: 'replace', path: path('invertUp'), value: pipe.invertUp + 0.02 });
    expect(edit(found('other', pipe.id, pipe.invertUp + 2))).toBeNull();
  });

  test.each(['water', 'soil'] as const)('%s is for the estimator to think about, and no edit', (kind) => expect(edit(found(kind, channel.id, 0.3))).toBeNull());
});
