import type { DesignDocument } from '@yardfall/calc';
import { describe, expect, test } from 'vitest';
import { remedyOperations } from './remedy.ts';

const document = { system: { parts: [{ id: 'CH1' }, { id: 'P1', invertDown: 30.2 }] } } as unknown as DesignDocument;
const remedy = (path: string) => ({ code: 'x', params: {}, patch: [{ path, value: 30.1 }] });

describe('a remedy as operations', () => {
  test.each(['system.parts.1.invertDown', '/system/parts/1/invertDown', 'system.parts.P1.invertDown', 'system.parts.@P1.invertDown'])('%s names the part by its id', (path) => {
    expect(remedyOperations(document, remedy(path))).toEqual([{ kind: 'replace', path: ['system', 'parts', '@P1', 'invertDown'], value: 30.1 }]);
  });
});
