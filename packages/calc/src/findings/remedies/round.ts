/** Levels and sizes of a remedy are told to a hundredth of a millimeter; what just fits stays. Source: ours. */
const scale = 1e5;
const speck = 1e-3;

/** The next round value at or below. */
export const roundDown = (value: number): number => Math.floor(value * scale + speck) / scale;
/** The next round value at or above. */
export const roundUp = (value: number): number => -Math.floor(-value * scale + speck) / scale;
