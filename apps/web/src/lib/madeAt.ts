/** When an id of version 7 was made (RFC 9562, section 5.7: its first 48 bits are milliseconds). */
export function madeAt(id: string): string {
  return new Date(Number.parseInt(id.replaceAll('-', '').slice(0, 12), 16)).toISOString();
}
