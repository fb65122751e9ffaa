/** Words of a name without accents, marks and capitals. */
function wordsOf(name: string): readonly string[] {
  return name.normalize('NFKD').replace(/[\u0300-\u036F]/g, '').toLowerCase().split(/[^\p{L}\p{N}]+/u).filter((word) => word !== '');
}

/** Whether two names may be one person's: "R. Delgado" is Rosa Delgado. In doubt they are. */
export function sameName(a: string, b: string): boolean {
  const [short, long] = [wordsOf(a), wordsOf(b)].toSorted((x, y) => x.length - y.length) as [readonly string[], readonly string[]];
  return short.every((word) => long.some((other) => other.startsWith(word) || word.startsWith(other)));
}

/** Whether a reason says something: two words at least, ten letters at least. Ours. */
export function saysWhy(reason: string): boolean {
  const words = wordsOf(reason);
  return words.length >= 2 && words.join('').length >= 8;
}
