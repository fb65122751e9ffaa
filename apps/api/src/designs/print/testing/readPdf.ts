import { getDocumentProxy, getResolvedPDFJS } from 'unpdf';

export type Place = readonly [x: number, y: number];
type Matrix = readonly [number, number, number, number, number, number];

export interface ReadPage {
  readonly width: number;
  readonly height: number;
  /** Every outline in the order in which it is drawn, in points from the lower left corner of the paper. */
  readonly outlines: readonly { readonly points: readonly Place[]; readonly closed: boolean; readonly drawn: 'stroke' | 'fill' }[];
  readonly words: readonly { readonly text: string; readonly at: Place; readonly size: number }[];
}

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1], m[1] * n[0] + m[3] * n[1], m[0] * n[2] + m[2] * n[3], m[1] * n[2] + m[3] * n[3], m[0] * n[4] + m[2] * n[5] + m[4], m[1] * n[4] + m[3] * n[5] + m[5],
];
const put = (m: Matrix, x: number, y: number): Place => [m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5]];

/** What stands in a file, read by a reader that knows nothing of its writer. */
export async function readPdf(bytes: Buffer): Promise<ReadPage[]> {
  const { OPS } = await getResolvedPDFJS();
  const pdf = await getDocumentProxy(new Uint8Array(bytes));
  return Promise.all(Array.from({ length: pdf.numPages }, async (_, index) => {
    const page = await pdf.getPage(index + 1);
    const { width, height } = page.getViewport({ scale: 1 });
    const { fnArray, argsArray } = await page.getOperatorList();
    const outlines: ReadPage['outlines'][number][] = [];
    const saved: Matrix[] = [];
    let matrix: Matrix = [1, 0, 0, 1, 0, 0];
    fnArray.forEach((op: number, at: number) => {
      const args = argsArray[at] as never;
      if (op === OPS.save) saved.push(matrix);
      else if (op === OPS.restore) matrix = saved.pop() ?? matrix;
      else if (op === OPS.transform) matrix = times(matrix, args);
      else if (op === OPS.constructPath) outlines.push({ ...outline(args[1][0], matrix), drawn: args[0] === OPS.stroke ? 'stroke' : 'fill' });
    });
    const { items } = await page.getTextContent();
    const words = (items as readonly (object | { readonly str: string; readonly transform: readonly number[] })[]).flatMap((item) => ('str' in item && item.str.trim() !== '' ? [{ text: item.str, at: [Number(item.transform[4]), Number(item.transform[5])] as const, size: Number(item.transform[0]) }] : []));
    return { width, height, outlines, words };
  }));
}

/** The reader's own numbering of the steps of an outline. */
const move = 0;
const lineTo = 1;
const curve = 2;

function outline(list: Float32Array, matrix: Matrix): { points: Place[]; closed: boolean } {
  const points: Place[] = [];
  let closed = false;
  let at = 0;
  const next = (): number => list[at++] ?? Number.NaN;
  while (at < list.length) {
    const op = next();
    if (op === move || op === lineTo) points.push(put(matrix, next(), next()));
    else if (op === curve) {
      at += 4;
      points.push(put(matrix, next(), next()));
    } else closed = true;
  }
  return { points, closed };
}
