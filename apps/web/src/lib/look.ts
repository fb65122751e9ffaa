/** What a quick look says of a picture. */
export interface Look {
  readonly width: number;
  readonly height: number;
  /** Standard deviation of the Laplacian of the grey picture at `lookSize`; low is soft. */
  readonly sharpness: number;
}

/** Longest side of the picture that is looked at [pixels]. */
export const lookSize = 640;
/** Below these a person is asked to look again, and never more than asked (ours, tried on drawn and softened pictures). */
export const least = { sharpness: 2.5, side: 600 } as const;

export type Doubt = 'soft' | 'small';

export function doubtsOf({ width, height, sharpness }: Look): Doubt[] {
  return [...(sharpness < least.sharpness ? ['soft' as const] : []), ...(Math.min(width, height) < least.side ? ['small' as const] : [])];
}

/** No longer than this is a picture looked at before it is kept [ms]; ours. */
const patience = 2500;

/** Null when this browser cannot open it, or not in time: then there is nothing to say. */
export async function lookAt(file: Blob): Promise<Look | null> {
  return Promise.race([look(file), new Promise<null>((resolve) => { setTimeout(() => resolve(null), patience); })]);
}

async function look(file: Blob): Promise<Look | null> {
  try {
    const bitmap = await createImageBitmap(file);
    const { width, height } = bitmap;
    const scale = Math.min(1, lookSize / Math.max(width, height));
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [Math.max(3, Math.round(width * scale)), Math.max(3, Math.round(height * scale))];
    const pen = canvas.getContext('2d', { willReadFrequently: true });
    pen?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    bitmap.close();
    const pixels = pen?.getImageData(0, 0, canvas.width, canvas.height).data;
    return pixels === undefined ? null : { width, height, sharpness: sharpnessOf(greyOf(pixels), canvas.width) };
  } catch {
    return null;
  }
}

/** Luma of RGBA pixels (ITU-R BT.601 weights). */
export function greyOf(rgba: ArrayLike<number>): Float32Array {
  return Float32Array.from({ length: rgba.length / 4 }, (_, at) => 0.299 * (rgba[4 * at] ?? 0) + 0.587 * (rgba[4 * at + 1] ?? 0) + 0.114 * (rgba[4 * at + 2] ?? 0));
}

/** Standard deviation of the Laplacian (kernel 0 1 0, 1 -4 1, 0 1 0) over the inner pixels of a grey picture of that width. */
export function sharpnessOf(grey: ArrayLike<number>, width: number): number {
  const height = grey.length / width;
  let [sum, squares, count] = [0, 0, 0];
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const at = y * width + x;
      const value = (grey[at - 1] ?? 0) + (grey[at + 1] ?? 0) + (grey[at - width] ?? 0) + (grey[at + width] ?? 0) - 4 * (grey[at] ?? 0);
      sum += value;
      squares += value * value;
      count += 1;
    }
  }
  return count === 0 ? 0 : Math.sqrt(Math.max(0, squares / count - (sum / count) ** 2));
}
