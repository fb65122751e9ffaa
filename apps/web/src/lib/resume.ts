import { pathOf, type Endpoint } from '@yardfall/contracts';
import { ApiProblem, problemOf } from './problem.ts';

/** Where a file goes: the endpoint that begins an upload, with what its address names. */
export interface Target {
  readonly begin: Endpoint;
  readonly params: Readonly<Record<string, string>>;
}

/** Bytes of one request: at first, at least and at most (ours). A line that carries one quickly gets a larger one, a line that breaks a smaller one. */
const piece = { first: 512_000, least: 64_000, most: 8_000_000 };
/** Faster than this is quick [ms] (ours). */
const quick = 1_500;

let size = piece.first;

/**
 * Sends a file by the open protocol tus 1.0.0 and goes on from what the office has. Throws ApiProblem; whoever calls again with the same `meta` goes on.
 * `onSent` hears the bytes that have arrived; `goOn` is asked before each piece, and false says that it was put off.
 */
export async function sendWhole(target: Target, file: Blob, meta: object, onSent: (bytes: number) => void = () => undefined, goOn: () => boolean = () => true): Promise<boolean> {
  const begun = await ask(pathOf(target.begin, target.params), 'POST', { 'upload-length': String(file.size), 'upload-metadata': `meta ${base64(JSON.stringify(meta))}` });
  const address = begun.headers.get('location') ?? '';
  for (let offset = offsetIn(begun); offset < file.size; ) {
    onSent(offset);
    if (!goOn()) return false;
    offset = await sendPiece(address, file, offset);
  }
  onSent(file.size);
  return true;
}

async function sendPiece(address: string, file: Blob, offset: number): Promise<number> {
  const began = performance.now();
  try {
    const headers = { 'upload-offset': String(offset), 'content-type': 'application/offset+octet-stream' };
    const next = offsetIn(await ask(address, 'PATCH', headers, file.slice(offset, offset + size)));
    if (performance.now() - began < quick) size = Math.min(size * 2, piece.most);
    return next;
  } catch (error) {
    size = Math.max(size / 2, piece.least);
    // The answer to an earlier piece was lost: the office says from where it wants more.
    if (error instanceof ApiProblem && error.code === 'upload.offset') return Number(error.params['offset']);
    throw error;
  }
}

async function ask(address: string, method: 'POST' | 'PATCH', headers: Record<string, string>, body?: Blob): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(address, { method, headers: { 'tus-resumable': '1.0.0', ...headers }, body: body ?? null, credentials: 'same-origin', cache: 'no-store' });
  } catch {
    throw new ApiProblem('offline');
  }
  if (!response.ok) throw await problemOf(response);
  return response;
}

function offsetIn({ headers, status }: Response): number {
  const offset = headers.get('upload-offset');
  if (offset === null) throw new ApiProblem('unreadableAnswer', { status });
  return Number(offset);
}

/** Of the text's UTF-8 bytes. */
function base64(text: string): string {
  return btoa(String.fromCharCode(...new TextEncoder().encode(text)));
}
