import { readdirSync, readFileSync } from 'node:fs';
import { fixtureText } from './fixtures.ts';

/** Folders of single-method files. */
export const METHOD_FOLDERS = [
  'levels', 'rain', 'runoff', 'gutter', 'inlet', 'channel', 'swale', 'pipe', 'underdrain', 'basin', 'pump', 'outlet', 'proof', 'quantity',
] as const;

/** Files that hold no method of their own, and what they are part of. */
export const HELPERS: Readonly<Record<string, string>> = {
  'levels/levelBook.ts': 'types of the level book',
  'levels/checkReadings.ts': 'part of reduceLevelBook: what no rod can read',
  'rain/atlasText.ts': 'part of parseAtlas14: lines and cells of a file',
  'rain/atlasSection.ts': 'part of parseAtlas14: the tables of a file',
  'pump/lineProfile.ts': 'part of lineFilling and standingLine: levels along a line',
};

export interface DocumentedMethod {
  readonly name: string;
  readonly file: string;
  readonly what: string;
  readonly source: string;
  readonly range: string;
  readonly checked: string;
}

interface IndexCase {
  readonly row?: string;
  readonly case?: string;
  readonly fixture?: string;
  readonly tolerance?: number;
}

const source = new URL('../', import.meta.url);

export function methodFiles(): string[] {
  return METHOD_FOLDERS.flatMap((folder) => readdirSync(new URL(folder, source)).filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts')).sort().map((name) => `${folder}/${name}`));
}

const LABEL = /^(Limits|Source|Source and check|Checked against|Use):\s*/;

/** The labelled parts of a doc block; what stands before them is under ''. */
function partsOfDoc(doc: string): Map<string, string> {
  const parts = new Map<string, string>([['', '']]);
  let label = '';
  for (const raw of doc.split('\n')) {
    const line = raw.replace(/^\s*\*? ?/, '').trim();
    const match = LABEL.exec(line);
    if (match !== null) label = match[1] ?? '';
    else if (line.startsWith('@')) label = line.split(' ')[0] === '@param' ? `@${parts.size}` : '@returns';
    const text = match === null ? line : line.slice(match[0].length);
    parts.set(label, `${parts.get(label) ?? ''}${text}\n`);
  }
  return parts;
}

const flat = (text: string | undefined): string => (text ?? '').replaceAll(/\s+/g, ' ').trim();

/** Ranges that the parameters name after their unit: "flow >= 0". */
function rangesOf(parts: ReadonlyMap<string, string>): string[] {
  return [...parts].filter(([label]) => /^@\d/.test(label)).flatMap(([, text]) => {
    const match = /^@param (\w+) .*?((?:[<>]=? ?[\w.]+)|(?:\d[\w.]* to [\w.']+(?: \w+)?))$/.exec(flat(text));
    return match === null ? [] : [`${match[1]} ${match[2]}`];
  });
}

function documented(file: string, doc: string, name: string): DocumentedMethod | null {
  const parts = partsOfDoc(doc);
  const from = parts.get('Source') ?? parts.get('Source and check');
  const first = flat((parts.get('') ?? '').trim().split(/\n\s*\n/)[0]);
  if (from === undefined || first === '' || !doc.includes('\n')) return null;
  return {
    name, file, what: first.split(/(?<=[.:]) /)[0]?.replace(/[.:]$/, '') ?? '', source: flat(from),
    range: [...rangesOf(parts), flat(parts.get('Limits'))].filter((text) => text !== '').join('; '),
    checked: flat(parts.get('Checked against') ?? parts.get('Source and check')),
  };
}

/** The methods of a file, read from the doc blocks over its exports. */
export function methodsOf(file: string): DocumentedMethod[] {
  const text = readFileSync(new URL(file, source), 'utf8');
  const found: DocumentedMethod[] = [];
  for (const match of text.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*export (?:function|const) (\w+)/g)) {
    const method = documented(file, match[1] ?? '', match[2] ?? '');
    if (method !== null) found.push(method);
  }
  return found;
}

function inRange(row: string, from: string, to: string): boolean {
  const [a = [], b = [], c = []] = [row, from, to].map((id) => id.split('.').map(Number));
  return a[0] === b[0] && (a[1] ?? NaN) >= (b[1] ?? NaN) && (a[1] ?? NaN) <= (c[1] ?? NaN);
}

/** Cases of the index that a "Checked against" names: a fixture with its rows, or the whole fixture. */
export function casesOf(checked: string): { readonly row: string; readonly tolerance: number }[] {
  const index = JSON.parse(fixtureText('index.json')) as { reference: IndexCase[]; own: IndexCase[]; files: IndexCase[] };
  const rows = [...index.reference, ...index.own].filter((entry) => entry.fixture !== undefined);
  const tables = index.files.filter((file) => !rows.some((row) => row.fixture === file.fixture)).map((file) => ({ ...file, row: file.fixture?.replace(/.*\//, '') }));
  const all: readonly IndexCase[] = [...rows, ...tables];
  const chosen = new Map<string, number>();
  const places = [...checked.matchAll(/fixtures\/([\w./-]+\.(?:json|csv))/g)];
  places.forEach((place, i) => {
    const words = checked.slice(place.index, places[i + 1]?.index);
    const ids = [...words.matchAll(/[\w.]*\w/g)].map((match) => match[0]);
    const span = /rows? (\d+\.\d+) to (\d+\.\d+)/.exec(words);
    const here = all.filter((entry) => entry.fixture === place[1]);
    const named = here.filter((entry) => ids.includes(entry.row ?? '') || ids.includes(entry.case ?? '') || (span !== null && inRange(entry.row ?? '', span[1] ?? '', span[2] ?? '')));
    for (const entry of named.length > 0 ? named : here) chosen.set(entry.row ?? entry.case ?? '', entry.tolerance ?? NaN);
  });
  return [...chosen].map(([row, tolerance]) => ({ row, tolerance }));
}
