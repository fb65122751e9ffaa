import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { describe, expect, it } from 'vitest';
import { compareAsBuilt, designedLevel } from './asBuilt.rules.ts';

const file = new URL('../../../../prisma/seed/sites/tern-hollow.json', import.meta.url);
const document = JSON.parse(readFileSync(file, 'utf8')) as DesignDocument;
const basin = document.system.parts.find((part) => part.kind === 'basin');

describe('levels as built', () => {
  it('are compared with the level of the same name in the design', () => {
    const designed = basin?.kind === 'basin' ? basin.offLevel : NaN;
    const { asBuilt, unknown } = compareAsBuilt(document, [{ part: 'B1', field: 'offLevel', level: designed - 0.01 }]);
    expect(asBuilt[0]).toMatchObject({ part: 'B1', field: 'offLevel', designed });
    expect(asBuilt[0]?.difference).toBeCloseTo(-0.01, 12);
    expect(unknown).toEqual([]);
  });
  it.each([['B1', 'diameter'], ['B1', 'constructor'], ['B9', 'offLevel'], ['M1', 'solids']])('%s %s is no level of the design', (part, field) => {
    expect(designedLevel(document, part, field)).toBeNull();
    expect(compareAsBuilt(document, [{ part, field, level: 1 }]).unknown).toEqual([0]);
  });
});
