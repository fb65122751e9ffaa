const view = new DataView(new ArrayBuffer(8));

/** Upper 32 bits of a double, as a signed integer. */
export function highWord(x: number): number {
  view.setFloat64(0, x);
  return view.getInt32(0);
}

/** Lower 32 bits of a double, unsigned. */
export function lowWord(x: number): number {
  view.setFloat64(0, x);
  return view.getUint32(4);
}

export function fromWords(high: number, low: number): number {
  view.setInt32(0, high);
  view.setUint32(4, low);
  return view.getFloat64(0);
}

/** x with its lower 32 bits cleared, so that products of two such numbers lose little. */
export function clearLow(x: number): number {
  view.setFloat64(0, x);
  view.setUint32(4, 0);
  return view.getFloat64(0);
}

/** x * 2^n by exact steps, through the subnormal range too. */
export function scaleByPowerOfTwo(x: number, n: number): number {
  let value = x;
  let left = n;
  while (left > 1000) {
    value *= fromWords((1000 + 1023) << 20, 0);
    left -= 1000;
  }
  while (left < -1000) {
    value *= fromWords((-1000 + 1023) << 20, 0);
    left += 1000;
  }
  return value * fromWords((left + 1023) << 20, 0);
}
