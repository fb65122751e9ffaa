import { readFileSync } from 'node:fs';
import { DesignDocumentSchema } from '@yardfall/contracts';
import type { DesignDocument } from '@yardfall/calc';
import { section } from '@yardfall/drawing';
import { render } from '@yardfall/text';
import { describe, expect, test } from 'vitest';
import { plainSection, wordsOfKinds } from './plainSection.ts';
import { splitWhy } from './why.ts';

const file = new URL('../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url);
const document = DesignDocumentSchema.parse(JSON.parse(readFileSync(file, 'utf8'))) as DesignDocument;
const sill = Math.min(...document.site.sills.map(({ level }) => level));
const lettered = (pond: number) => {
  const drawn = section(document, null, { width: 390, height: 300, gravity: false, utilities: false, water: { pond, basin: null } });
  const plain = plainSection(drawn, document, (code, params) => render('en', 'us', code, params));
  return plain.items.flatMap((item) => (item.kind === 'text' ? [render('en', 'us', item.label.code, item.label.params).replaceAll('\u00a0', ' ')] : []));
};

describe("the customer's section", () => {
  test('names parts in plain words and no level, size or fall', () => {
    const words = lettered(sill - 0.0254);
    expect(words).toEqual(expect.arrayContaining(['Your sill', 'Water, 1.0 in below', 'Drain slot', 'Pit', 'Pump', 'From the gutter', 'Way out, roof water', 'Way out, pumped water']));
    expect(words.filter((word) => /invert|weep|check valve|rim|\d ft|gpm|\bOn\b|\bOff\b/i.test(word) && !/not drawn|^\d+(\.\d)? ft$/.test(word))).toEqual([]);
  });

  test('has no line to a word that is left out, no level at which a machine switches, and no key of the trade', () => {
    for (const width of [358, 1180]) {
      const drawn = section(document, null, { width, height: 420, gravity: false, utilities: false, water: { pond: sill - 0.03, basin: null } });
      const plain = plainSection(drawn, document, (code, params) => render('en', 'us', code, params));
      const led = plain.items.flatMap((item) => (item.kind === 'line' && item.of ? [item.of] : []));
      expect([...new Set(led)]).toEqual(width < 600 ? [] : ['drawing.pump']);
      expect(drawn.items.some((item) => item.kind === 'line' && item.of === 'drawing.tailwater')).toBe(true);
      const basin = document.system.parts.find(({ kind }) => kind === 'basin')?.id;
      expect(plain.items.filter((item) => item.kind === 'line' && item.part === basin && item.dash === 'dash')).toEqual([]);
      expect(plain.key).toEqual([]);
    }
  });

  test('says of water over the sill that it comes in, without a height', () => {
    const words = lettered(sill + 0.05);
    expect(words).toContain('Water comes in');
    expect(words.filter((word) => /over|\d in\b/.test(word))).toEqual([]);
  });

  test('explains every part of the design that it names', () => {
    const codes = wordsOfKinds(document);
    expect(codes[0]).toBe('portal.word.sill');
    expect(codes).toEqual(expect.arrayContaining(['portal.word.channel', 'portal.word.basin', 'portal.word.pump', 'portal.word.outlet']));
  });
});

test('the two worst what-ifs stand in sight, what was measured is one press away', () => {
  const texts = ['now.over', 'tooHigh', 'storm', 'stillIn.street', 'powerOut.over', 'gutter.below', 'measured.levels', 'noDry'].map((code) => ({ code: `portal.why.${code}`, params: {} }));
  const { first, more } = splitWhy(texts);
  expect(first.map(({ code }) => code.slice(11))).toEqual(['now.over', 'tooHigh', 'storm', 'powerOut.over', 'gutter.below', 'noDry']);
  expect(more).toHaveLength(2);
});
