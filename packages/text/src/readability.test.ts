import { describe, expect, test } from 'vitest';
import { portal } from './catalogues/portal.ts';
import { portalCare } from './catalogues/portal/care.ts';
import { portalWhy } from './catalogues/portal/why.ts';
import { render, isMessageCode } from './render.ts';
import { parseTemplate } from './template.ts';
import type { Language } from './languages.ts';

/** Figures as they stand on a usual page; their units count as words. */
const usual: Record<string, number | string> = {
  minutes: 2400, height: 0.04, low: 0.02, high: 0.06, shortfall: 0.3, years: 25, n: 3, time: 1800, volume: 2.46, flow: 0.0019, name: 'Ines Calloway',
  address: '14 Tern Hollow', company: 'Fern Yards', by: 'Ines', at: '2031-03-04T15:30:00Z', foot: '2031-03-05T15:30:00Z', wheels: '2031-03-11T15:30:00Z', date: '2031-03-04', on: '2031-03-04', from: '2031-03-04', until: '2032-03-04', price: 1358885,
  language: 'English', breaker: '14', measured: 0.0019, predicted: 0.0019, uncertainty: 0.06, share: 0.03, within: 0.1, photos: 1, builtIn: 2, limits: 1.5, one: 'the back door', two: 'the garage', part: 'Pipe', phone: '(919) 555-0117',
};

function page(entries: Readonly<Record<string, unknown>>, language: Language): string[] {
  return Object.keys(entries).map((code) => {
    if (!isMessageCode(code)) throw new Error(code);
    return render(language, 'us', code, usual);
  });
}

const sentences = (text: string) => text.split(/(?<=[.!?])\s+(?=[\p{Lu}¿"])/u).filter((s) => /\p{L}/u.test(s));
const words = (text: string) => text.match(/[\p{L}'’]+/gu) ?? [];

/** Vowel groups less a silent e: the usual estimate for English (ours). */
function englishSyllables(word: string): number {
  const w = word.toLowerCase().replace(/[^a-z]/g, '');
  const groups = w.replace(/(?:[^laeiouy]e|ed|es)$/, '').match(/[aeiouy]+/g)?.length ?? 0;
  return Math.max(1, groups);
}

/** Vowel groups, split where two strong vowels or an accented weak one meet. */
function spanishSyllables(word: string): number {
  const w = word.toLowerCase().replace(/(?<=[gq])u(?=[eiéí])/g, '');
  const split = w.replace(/([aeoáéó])(?=[aeoáéó])/g, '$1-').replace(/([íú])(?=[aeo])/g, '$1-').replace(/([aeo])(?=[íú])/g, '$1-');
  return Math.max(1, split.match(/[aeiouáéíóúü]+/g)?.length ?? 0);
}

function measure(texts: readonly string[], syllables: (word: string) => number) {
  const all = texts.flatMap(sentences);
  const list = all.flatMap(words);
  const count = list.reduce((sum, word) => sum + syllables(word), 0);
  return { perSentence: list.length / all.length, perWord: count / list.length };
}

describe.each([['why', portalWhy], ['care and next', portalCare], ['page', portal]] as const)('what the customer reads: %s', (_, entries) => {
  test.each(['en', 'es'] as const)('keeps to 15 words in a sentence (%s)', (language) => {
    const long = page(entries, language).flatMap(sentences).filter((s) => words(s).length > 15);
    expect(long).toEqual([]);
  });

  // Kincaid et al. 1975: grade = 0.39 words/sentence + 11.8 syllables/word - 15.59.
  test('reads at grade 6 or below in English', () => {
    const { perSentence, perWord } = measure(page(entries, 'en'), englishSyllables);
    expect(0.39 * perSentence + 11.8 * perWord - 15.59).toBeLessThanOrEqual(6);
  });

  // Fernández Huerta 1959 in the form with words a sentence: 206.84 - 60 syllables/word - 1.02 words/sentence (from memory).
  test('reads at 70 or above in Spanish', () => {
    const { perSentence, perWord } = measure(page(entries, 'es'), spanishSyllables);
    expect(206.84 - 60 * perWord - 1.02 * perSentence).toBeGreaterThanOrEqual(70);
  });
});

test('every figure of a why-sentence is a parameter', () => {
  for (const [code, message] of Object.entries(portalWhy)) {
    for (const template of Object.values(message)) {
      const plain = parseTemplate(template).filter((piece) => typeof piece === 'string').join('');
      expect(plain.match(/\d+/g)?.filter((n) => n !== '1' && n !== '10') ?? [], code).toEqual([]);
    }
  }
});
