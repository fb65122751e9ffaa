/** Product of two 32-bit integers, its lower 32 bits. */
function multiply32(a: number, b: number): number {
  const high = ((a >>> 16) * (b & 0xffff) + (a & 0xffff) * (b >>> 16)) & 0xffff;
  return ((a & 0xffff) * (b & 0xffff) + high * 65536) | 0;
}

/**
 * Seeded generator (mulberry32): equal seeds give equal draws on every engine.
 *
 * @returns a function giving numbers in [0, 1)
 * Source: Tommy Ettinger's mulberry32, public domain, from memory
 */
export function seededRandom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = multiply32(state ^ (state >>> 15), 1 | state);
    t = (t + multiply32(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
