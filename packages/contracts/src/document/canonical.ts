import canonicalize from 'canonicalize';

/** Canonical UTF-8 bytes of a JSON value (RFC 8785): -0 becomes 0, a number that is not finite throws. */
export function canonicalBytes(value: unknown): Uint8Array<ArrayBuffer> {
  assertFinite(value, '');
  const json = canonicalize(value);
  if (json === undefined) throw new TypeError('nothing to write');
  return new TextEncoder().encode(json);
}

/** SHA-256 in hex, in the browser and in Node alike. */
export async function sha256Hex(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = await globalThis.crypto.subtle.digest('SHA-256', bytes);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

function assertFinite(value: unknown, path: string): void {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new RangeError(`${path || 'value'} is not finite`);
  if (Array.isArray(value)) value.forEach((item, index) => assertFinite(item, `${path}.${String(index)}`));
  else if (typeof value === 'object' && value !== null) for (const [key, item] of Object.entries(value)) assertFinite(item, `${path}.${key}`);
}
