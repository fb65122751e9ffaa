/** The SQLSTATE or Prisma code inside an error, wherever the layers put it. */
export function sqlStateOf(error: unknown): string | null {
  for (let at: unknown = error, depth = 0; isRecord(at) && depth < 8; depth += 1) {
    const own = [at['originalCode'], at['code']].find((code) => typeof code === 'string' && /^[0-9A-Z]{5}$/.test(code) && !/^P2\d{3}$/.test(code));
    if (typeof own === 'string') return own;
    at = at['driverAdapterError'] ?? (isRecord(at['meta']) ? at['meta'] : undefined) ?? at['cause'];
  }
  return null;
}

export function prismaCodeOf(error: unknown): string | null {
  if (!isRecord(error)) return null;
  const { code } = error;
  return typeof code === 'string' && /^P\d{4}$/.test(code) ? code : null;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
