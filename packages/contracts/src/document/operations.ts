import type { DraftOperation } from '../designs.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** An operation that has no place in the document: the path, and what is wrong there. */
export class OperationError extends Error {
  readonly path: string;
  readonly reason: 'missing' | 'notAList' | 'exists' | 'root';
  constructor(path: readonly string[], reason: OperationError['reason']) {
    super(`${reason} at ${path.join('.')}`);
    this.name = 'OperationError';
    this.path = path.join('.');
    this.reason = reason;
  }
}

/**
 * The part of the document that an operation touches: an element of a list by its id, else the field below the root
 * ("system.parts.@P1", "site.soil", "title"). Two edits of the same part meet.
 */
export function partOf(operation: DraftOperation): string {
  if (operation.kind === 'connect') return `system.parts.@${operation.part}`;
  const element = operation.path.findIndex((key) => key.startsWith('@'));
  if (element >= 0) return operation.path.slice(0, element + 1).join('.');
  const added = operation.kind === 'add' ? idOf(operation.value) : null;
  if (added !== null && operation.path.at(-1) === '-') return [...operation.path.slice(0, -1), `@${added}`].join('.');
  return operation.path.slice(0, 2).join('.');
}

/** Whether two parts are the same or one holds the other. */
export function partsMeet(a: string, b: string): boolean {
  return a === b || a.startsWith(`${b}.`) || b.startsWith(`${a}.`);
}

/** Parts that an operation depends on besides the one it changes: a connection needs the part that it leads to. */
export function partsNeeded(operation: DraftOperation): string[] {
  if (operation.kind === 'connect' && operation.drainsTo !== null) return [`system.parts.@${operation.drainsTo}`];
  return [];
}

/** The document after the operations, in order. The given one stays as it is. */
export function applyOperations<T>(document: T, operations: readonly DraftOperation[]): T {
  const root = structuredClone(document) as Json;
  for (const operation of operations) applyOne(root, operation);
  return root as T;
}

/** What stands at a path, for whoever has to choose; undefined when there is nothing. */
export function valueAt(document: unknown, path: readonly string[]): unknown {
  let here = document as Json | undefined;
  for (const key of path) here = here === undefined ? undefined : child(here, key);
  return here;
}

function applyOne(root: Json, operation: DraftOperation): void {
  const path = operation.kind === 'connect' ? ['system', 'parts', `@${operation.part}`, 'drainsTo'] : operation.path;
  const parent = walk(root, path.slice(0, -1));
  const key = path.at(-1) ?? '';
  if (operation.kind === 'connect') return put(parent, key, operation.drainsTo, path);
  if (operation.kind === 'replace') return put(parent, key, operation.value as Json, path);
  if (operation.kind === 'remove') return take(parent, key, path);
  add(parent, key, operation.value as Json, path);
}

function walk(root: Json, path: readonly string[]): Json {
  let here: Json | undefined = root;
  for (const [depth, key] of path.entries()) {
    here = child(here, key);
    if (here === undefined || here === null || typeof here !== 'object') throw new OperationError(path.slice(0, depth + 1), 'missing');
  }
  return here;
}

function child(here: Json, key: string): Json | undefined {
  if (Array.isArray(here)) return here[indexOf(here, key)];
  if (here === null || typeof here !== 'object' || !Object.hasOwn(here, key)) return undefined;
  return here[key];
}

function indexOf(list: readonly Json[], key: string): number {
  if (key.startsWith('@')) return list.findIndex((item) => idOf(item) === key.slice(1));
  return /^\d{1,5}$/.test(key) ? Number(key) : -1;
}

function idOf(value: unknown): string | null {
  return typeof value === 'object' && value !== null && 'id' in value && typeof value.id === 'string' ? value.id : null;
}

function put(parent: Json, key: string, value: Json, path: readonly string[]): void {
  if (Array.isArray(parent)) {
    const index = indexOf(parent, key);
    if (index < 0 || index >= parent.length) throw new OperationError(path, 'missing');
    parent[index] = value;
  } else if (parent !== null && typeof parent === 'object' && Object.hasOwn(parent, key)) parent[key] = value;
  else throw new OperationError(path, 'missing');
}

function take(parent: Json, key: string, path: readonly string[]): void {
  if (!Array.isArray(parent)) throw new OperationError(path, 'notAList');
  const index = indexOf(parent, key);
  if (index < 0 || index >= parent.length) throw new OperationError(path, 'missing');
  parent.splice(index, 1);
}

/** At the end of a list ("-"), before an element of it, or after the last when its index is named. */
function add(parent: Json, key: string, value: Json, path: readonly string[]): void {
  if (!Array.isArray(parent)) throw new OperationError(path, 'notAList');
  const id = idOf(value);
  if (id !== null && parent.some((item) => idOf(item) === id)) throw new OperationError(path, 'exists');
  if (key === '-') parent.push(value);
  else {
    const index = indexOf(parent, key);
    if (index < 0 || index > parent.length) throw new OperationError(path, 'missing');
    parent.splice(index, 0, value);
  }
}
