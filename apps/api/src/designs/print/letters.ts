import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const font = (name: string): Buffer => readFileSync(require.resolve(`@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-${name}-normal.woff`));

/** The letters of the page, from the same package as those of the screen: western Europe first, then the rest of the Latin alphabet. */
const files = { plain: 'latin-400', bold: 'latin-700', plainExt: 'latin-ext-400', boldExt: 'latin-ext-700' } as const;
export type FontName = keyof typeof files;
export const fontNames = Object.keys(files) as FontName[];

const read = new Map<FontName, Buffer>();

export function fontFile(name: FontName): Buffer {
  const bytes = read.get(name) ?? font(files[name]);
  read.set(name, bytes);
  return bytes;
}

/** What the two files hold, as far as names and sentences need it. */
const inFirst = /[\u0020-\u007e\u00a0-\u00ff\u0152\u0153\u2013\u2014\u2018\u2019\u201c\u201d\u2022\u2026\u20ac\u2122\u2212]/;
const inSecond = /[\u0100-\u017f\u0218-\u021b\u1e00-\u1e9f]/;

/** Stretches of a text that one file holds; a letter that neither holds is shown as a question mark. */
export function runsOf(text: string, bold: boolean): { font: FontName; text: string }[] {
  const [first, second]: readonly [FontName, FontName] = bold ? ['bold', 'boldExt'] : ['plain', 'plainExt'];
  const runs: { font: FontName; text: string }[] = [];
  for (const letter of text.normalize('NFC').replaceAll('\u202f', '\u00a0')) {
    const font = inSecond.test(letter) ? second : first;
    const shown = inFirst.test(letter) || inSecond.test(letter) ? letter : '?';
    const last = runs.at(-1);
    if (last?.font === font) last.text += shown;
    else runs.push({ font, text: shown });
  }
  return runs;
}
