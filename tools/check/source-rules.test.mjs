// @ts-check
import { describe, expect, it } from 'vitest';
import { breaches, inexactNumbers, spokenLiterals } from './source-rules.mjs';

/** @param {string} source */
const numbers = (source) => breaches('x.ts', source, [inexactNumbers]).map(({ line }) => line);
/** @param {string} source */
const words = (source) => breaches('x.tsx', source, [spokenLiterals]).map(({ text }) => text);

describe('numbers that are the same on every engine', () => {
  it.each(['x ** 2', 'let y = 2; y **= 3', 'Math.pow(x, 2)', 'Math.exp(1)', 'Math.round(x)', "Math['sin'](x)"])('refuses %s', (source) => {
    expect(numbers(source)).toEqual([1]);
  });
  it.each(['Math.sqrt(x)', 'Math.abs(x)', 'Math.min(1, 2)', 'Math.max(1, 2)', 'Math.floor(x)', 'Math.PI', 'x * x', 'other.pow(x)'])('lets %s pass', (source) => {
    expect(numbers(source)).toEqual([]);
  });
  it('names the line', () => {
    expect(numbers('const a = 1;\nconst b = a ** 2;')).toEqual([2]);
  });
});

describe('words on the screen', () => {
  it.each(['<p>Pour the slab</p>', '<p>{x} ft</p>', '<img alt="Section" />', "<b title={'Close'} />", '<b aria-label={`Job ${n}`} />'])('refuses %s', (source) => {
    expect(words(source)).toHaveLength(1);
  });
  it.each(['<p>{t("job.title")}</p>', '<p>·</p>', '<b className="wide" title={t("x")} />', '<img alt="" />', '<b label={`O${n}. ${t(k)}`} />', '<b aria-label={`${a}: ${b}`} />'])('lets %s pass', (source) => {
    expect(words(source)).toEqual([]);
  });
});
