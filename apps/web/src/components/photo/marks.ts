import type { PhotoMark } from '@yardfall/contracts';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Shorter strokes are slips of the finger [share of the picture] (ours). */
const shortest = 0.02;

const inside = (share: number): number => Math.min(1, Math.max(0, share));

/** Place of a pointer in a picture as shares of its width and height. */
export function spotIn(box: { readonly left: number; readonly top: number; readonly width: number; readonly height: number }, at: { readonly clientX: number; readonly clientY: number }): Spot {
  return { x: inside((at.clientX - box.left) / box.width), y: inside((at.clientY - box.top) / box.height) };
}

/** What a stroke leaves; null for a slip. Words stand where the stroke began. */
export function markOf(kind: PhotoMark['kind'], from: Spot, to: Spot, words: string): PhotoMark | null {
  if (kind === 'text') return words.trim() === '' ? null : { kind, from, to: from, words: words.trim() };
  return Math.hypot(to.x - from.x, to.y - from.y) < shortest ? null : { kind, from, to, words: '' };
}

/** The two barbs of an arrow from one point to another [units of the points], as a polyline through its tip. */
export function headOf(from: Spot, to: Spot, length: number): string {
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const barb = (turn: number) => `${to.x - length * Math.cos(angle + turn)},${to.y - length * Math.sin(angle + turn)}`;
  return `${barb(0.5)} ${to.x},${to.y} ${barb(-0.5)}`;
}
