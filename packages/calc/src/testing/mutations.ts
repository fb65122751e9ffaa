import type { DesignDocument } from '../document/document.ts';
import type { Draw } from './generate/draw.ts';

export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Path = readonly (string | number)[];

/** Paths of every leaf of a document. */
function leaves(value: Json, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const entries: [string | number, Json][] = Array.isArray(value) ? value.map((item, i) => [i, item]) : Object.entries(value);
  return entries.flatMap(([key, item]) => leaves(item, [...path, key]));
}

function holderOf(copy: Json, path: Path): Record<string | number, Json> {
  let holder = copy as Record<string | number, Json>;
  for (const key of path.slice(0, -1)) holder = holder[key] as Record<string | number, Json>;
  return holder;
}

const factors = [0, 0.1, 0.5, 0.8, 0.9, 0.99, 0.999, 0.9999, 1.0001, 1.001, 1.01, 1.1, 1.25, 2, 10];

/** A number as another hand would have typed it, a flag turned over; words, names and tables of rain stay. */
function retyped(draw: Draw, old: Json): Json {
  if (typeof old === 'boolean') return !old;
  if (typeof old !== 'number') return old;
  if (draw.chance(0.6)) return old * draw.pick(factors);
  return old + draw.pick([-0.3, -0.03, -0.003, -0.0003, 0.0003, 0.003, 0.03, 0.3]);
}

/** Parts of a document whose every number hangs on the others stay as they are in a gentle change. */
const fixed = (path: Path): boolean => path[0] === 'rain' && path[1] === 'table';

/** A valid document with one or two numbers typed otherwise. It mostly stays one that can be computed. */
export function gentlyChanged(document: DesignDocument, draw: Draw): DesignDocument {
  const copy = structuredClone(document) as unknown as Json;
  const paths = leaves(copy).filter((path) => !fixed(path) && ['number', 'boolean'].includes(typeof holderOf(copy, path)[path[path.length - 1]!]));
  for (let i = draw.whole(1, 2); i > 0; i -= 1) {
    const path = draw.pick(paths);
    const key = path[path.length - 1]!;
    const holder = holderOf(copy, path);
    holder[key] = retyped(draw, holder[key]!);
  }
  return copy as unknown as DesignDocument;
}

const strange: readonly (Json | undefined)[] = [
  undefined, null, NaN, Infinity, -Infinity, -1, -0, 0, 5e-324, 1e-9, 0.5, 1e5, 9.9e6, 1e300, -1e300, '', 'B1', 'P1', 'L1', 'pipe', '__proto__', true, [], {}, [null], [[]],
];

/** Whole branches of the document, to cut, empty, double or put in the place of one another. */
function branches(value: Json, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [];
  const entries: [string | number, Json][] = Array.isArray(value) ? value.map((item, i) => [i, item]) : Object.entries(value);
  return [...(path.length === 0 ? [] : [path]), ...entries.flatMap(([key, item]) => branches(item, [...path, key]))];
}

/** Takes a value out of where it is; files know no list with a hole. */
function takeOut(holder: Record<string | number, Json>, key: string | number): void {
  if (Array.isArray(holder)) (holder as Json[]).splice(Number(key), 1);
  else Reflect.deleteProperty(holder, key);
}

function breakBranch(copy: Json, draw: Draw): void {
  const path = draw.pick(branches(copy));
  const holder = holderOf(copy, path);
  const key = path[path.length - 1]!;
  const old = holder[key]!;
  if (draw.chance(0.3)) takeOut(holder, key);
  else if (Array.isArray(old) && old.length > 0) holder[key] = draw.pick<Json>([[], old[0]!, [...old, old[0]!], [...old].reverse(), old.slice(1)]);
  else holder[key] = draw.pick<Json>([[], {}, null, [old], 'text', 1]);
}

/** A document with one to three things broken in it. */
export function broken(document: DesignDocument, draw: Draw): DesignDocument {
  const copy = structuredClone(document) as unknown as Json;
  for (let i = draw.whole(1, 3); i > 0; i -= 1) {
    if (draw.chance(0.3)) breakBranch(copy, draw);
    const paths = leaves(copy).filter((path) => path.length > 0);
    const path = draw.pick(paths);
    const value = draw.pick(strange);
    const holder = holderOf(copy, path);
    const key = path[path.length - 1]!;
    if (value === undefined) takeOut(holder, key);
    else Object.defineProperty(holder, key, { value, enumerable: true, writable: true, configurable: true });
  }
  return copy as unknown as DesignDocument;
}

const noise = ['', ',', ',,', '\n', '\r', '"', '-', '-9.999', 'NaN', '1e999', '0', 'NA', '\u0000', '\ufeff', 'in/hr', 'mm', ':', 'min:,', 'by duration for ARI (years):,1,2', '9'.repeat(40)];

/** A text file with one to five cells, lines or characters changed. */
export function changedText(text: string, draw: Draw): string {
  let changed = text;
  for (let i = draw.pick([1, 1, 2, 5]); i > 0; i -= 1) {
    const lines = changed.split('\n');
    const at = draw.whole(0, lines.length - 1);
    const position = draw.whole(0, changed.length);
    const what = draw.whole(1, 8);
    if (what === 1) changed = changed.slice(0, position) + draw.pick(noise) + changed.slice(position);
    else if (what === 2) changed = changed.slice(0, position) + changed.slice(position + draw.whole(1, 12));
    else if (what === 3) changed = lines.filter((_, index) => index !== at).join('\n');
    else if (what === 4) changed = [...lines.slice(0, at), lines[at]!, ...lines.slice(at)].join('\n');
    else if (what === 5) changed = lines.map((line, index) => (index === at ? line.split(',').map((cell) => (draw.chance(0.3) ? draw.pick(noise) : cell)).join(',') : line)).join('\n');
    else if (what >= 7) changed = changed.slice(0, position) + changed.slice(position).replace(/\d/, String(draw.whole(0, 9)));
    else changed = changed.slice(0, draw.chance(0.2) ? position : changed.length);
  }
  return changed;
}
