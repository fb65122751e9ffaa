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
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
