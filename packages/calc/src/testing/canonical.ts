/** A key or text with half of a surrogate pair has no UTF-8. */
const lone = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;

function text(value: string): string {
  if (lone.test(value)) throw new Error(`half a character in ${JSON.stringify(value)}`);
  return JSON.stringify(value);
}

/**
 * Canonical JSON of a result: sorted keys, no spaces, numbers as the language prints them.
 * Whatever canonical JSON cannot hold (NaN, infinities, undefined, -0 that would read back as 0) is an error with its path.
 * Source: RFC 8785
 */
export function canonicalText(value: unknown, path = ''): string {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'string') return text(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value) || Object.is(value, -0)) throw new Error(`${String(Object.is(value, -0) ? '-0' : value)} at ${path}`);
    return String(value);
  }
  if (Array.isArray(value)) return `[${value.map((item, i) => canonicalText(item, `${path}/${i}`)).join(',')}]`;
  if (typeof value !== 'object') throw new Error(`${typeof value} at ${path}`);
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, item]) => `${text(key)}:${canonicalText(item, `${path}/${key}`)}`).join(',')}}`;
}
