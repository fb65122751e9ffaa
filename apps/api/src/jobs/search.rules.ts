import type { JobRow } from '@yardfall/contracts';

/** Rows that are opened at once while words are looked for. */
const atOnce = 200;

/** Lower case without accents: "nandú" is found by "NANDU". */
function plain(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}

export function wordsOf(typed: string): string[] {
  return plain(typed).split(/[\s,]+/).filter(Boolean);
}

/** Every word stands in the number, the title, the customer or the address. */
export function holdsAll({ number, title, customerName, address }: Pick<JobRow, 'number' | 'title' | 'customerName' | 'address'>, words: readonly string[]): boolean {
  const text = plain([String(number), title, customerName, address].join('\n'));
  return words.every((word) => text.includes(word));
}

export function searchStep(limit: number, words: number): number {
  return words === 0 ? limit + 1 : Math.max(atOnce, limit + 1);
}
