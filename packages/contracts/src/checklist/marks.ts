import type { Requirement } from '../checklists.ts';
import { jointAt, lineOf } from './laidLine.ts';
import { ownLineOf } from './ownLines.ts';

/** A mark such as `photo:2`, `value:recessUp` or `held:HP-13` as a message code with its parameters. */
export interface MarkText {
  readonly code: string;
  readonly params: Readonly<Record<string, string | number>>;
}

/** The sentence of what an item still misses. With the requirement at hand a pipe says where along it a shot is missing or off. */
export function missingText(mark: string, requirement?: Pick<Requirement, 'measures' | 'params'>): MarkText {
  const { kind, detail } = split(mark);
  const along = requirement === undefined || (kind !== 'value' && kind !== 'outside') ? null : alongPipe(kind, detail, requirement);
  const about = detail.split(':')[1] ?? '';
  // A tie says where at the part the tape ends; what it is called stands beside.
  const name = requirement?.params[`name:${about}`] ?? requirement?.params[`at:${about}`];
  if (along === null && name !== undefined && (kind === 'value' || kind === 'outside')) return { code: `checklists.missing.${kind}At`, params: { measure: measureCode(detail), at: name } };
  return along ?? { code: `checklists.missing.${kind}`, params: missingParams(kind, detail) };
}

function alongPipe(kind: 'value' | 'outside', name: string, requirement: Pick<Requirement, 'measures' | 'params'>): MarkText | null {
  const line = lineOf(requirement);
  if (line === null) return null;
  const at = name === 'invertUp' ? 0 : name === 'invertDown' ? line.length : jointAt(line, name);
  const place = name === 'invertUp' ? 'Up' : name === 'invertDown' ? 'Down' : 'Joint';
  return at === null ? null : { code: `checklists.missing.${kind}${place}`, params: { at } };
}

/** The sentence of why a fact did not count, or of why an item is open again. */
export function reasonText(mark: string): MarkText {
  const { kind, detail } = split(mark);
  return { code: `checklists.reason.${kind}`, params: detail === '' ? {} : { holdPoint: holdPointText(detail) } };
}

/** Code of the words of a hold point: `HP-3 scan` is `checklists.holdPoint.3scan`. */
export function holdPointText(id: string): string {
  return `checklists.holdPoint.${id.replace(/^HP-/, '').replace(' ', '')}`;
}

/** `clearance:U1` is the clearance at the utility U1: its words are those of `clearance`. */
export function measureCode(name: string): string {
  return `checklists.measure.${split(name).kind}`;
}

/** Code of the words of what is written down. */
export function plateCode(name: string): string {
  const line = ownLineOf(name);
  return line === null ? `checklists.plate.${name}` : `checklists.private.${line}`;
}

function missingParams(kind: string, detail: string): MarkText['params'] {
  if (kind === 'photo') return { count: Number(detail) };
  if (kind === 'value' || kind === 'outside') return { measure: measureCode(detail) };
  if (kind === 'text') return { what: plateCode(detail) };
  if (kind === 'signature') return { signer: `checklists.signer.${detail}` };
  return {};
}

function split(mark: string): { readonly kind: string; readonly detail: string } {
  const at = mark.indexOf(':');
  return at < 0 ? { kind: mark, detail: '' } : { kind: mark.slice(0, at), detail: mark.slice(at + 1) };
}
