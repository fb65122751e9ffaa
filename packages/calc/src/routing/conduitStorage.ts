import type { Channel, Pipe } from '../document/document.ts';
import { PI } from '../math/constants.ts';
import { circleSection } from '../pipe/circleSection.ts';

const strips = 64;

/** Share of a circle's area below a depth given as a share of its diameter, tabulated for the many slices. */
const circleShares: readonly number[] = Array.from({ length: strips + 1 }, (_, i) => circleSection(1, i / strips).area / (PI / 4));

function circleShare(depthRatio: number): number {
  if (depthRatio <= 0) return 0;
  if (depthRatio >= 1) return 1;
  const x = depthRatio * strips;
  const i = Math.floor(x);
  return circleShares[i]! + (circleShares[i + 1]! - circleShares[i]!) * (x - i);
}

const slices = 16;

/** Mean over a conduit's length of a quantity that depends on the depth of a level surface in it. */
function meanAlong(invertUp: number, invertDown: number, level: number, at: (depth: number) => number): number {
  let sum = 0;
  for (let i = 0; i < slices; i += 1) sum += at(level - (invertDown + ((invertUp - invertDown) * (i + 0.5)) / slices));
  return sum / slices;
}

/**
 * Water in a pipe below a level surface [m3].
 * Source: geometry of the circle
 */
export function pipeVolume(pipe: Pipe, level: number): number {
  const area = 0.25 * PI * pipe.diameter * pipe.diameter;
  return pipe.length * area * meanAlong(pipe.invertUp, pipe.invertDown, level, (depth) => circleShare(depth / pipe.diameter));
}

/**
 * Water in a channel body below a level surface [m3]; nothing above the inner depth.
 * Source: geometry; a trapezoid by its mean width, a round bottom by that of its half circle
 */
export function channelVolume(channel: Channel, level: number): number {
  const depthAt = (depth: number): number => Math.max(0, Math.min(depth, channel.depth));
  const width = channel.shape === 'trapezoidal' ? (channel.width + channel.bottomWidth) / 2 : channel.shape === 'roundBottomed' ? channel.width * (PI / 4) : channel.width;
  return channel.length * width * meanAlong(channel.invertUp, channel.invertDown, level, depthAt);
}
