import type { DesignDocument } from '@yardfall/calc';
import { documentVersion, upgradeDocument } from '@yardfall/calc/upgrade';
import { canonicalBytes, sha256Hex } from './canonical.ts';
import { DesignDocumentSchema } from './schema.ts';

/** Thrown for text that is not a design document: a code, the path in the document, and what was found there. */
export class DocumentParseError extends Error {
  readonly code: string;
  readonly path: string;
  readonly params: Readonly<Record<string, string | number>>;
  constructor(code: string, path: string, params: Readonly<Record<string, string | number>>) {
    super(`${code} at ${path || '(document)'}: ${Object.values(params).join(', ')}`);
    this.name = 'DocumentParseError';
    this.code = code;
    this.path = path;
    this.params = params;
  }
}

export interface ParsedDocument {
  readonly document: DesignDocument;
  readonly sha256: string;
}

/** Parses and upgrades a design document; the hash is over its canonical bytes (RFC 8785). */
export async function parseDesignDocument(json: string): Promise<ParsedDocument> {
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch (error) {
    throw new DocumentParseError('document.notJson', '', { message: error instanceof Error ? error.message : 'unreadable' });
  }
  return readDesignDocument(value);
}

export async function readDesignDocument(value: unknown): Promise<ParsedDocument> {
  if (isNewer(value)) throw new DocumentParseError('document.newerVersion', 'version', { version: value.version });
  const parsed = DesignDocumentSchema.safeParse(upgradeDocument(value));
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    throw new DocumentParseError('document.invalid', (issue?.path ?? []).map(String).join('.'), { message: issue?.message ?? 'invalid' });
  }
  return { document: parsed.data, sha256: await sha256Hex(canonicalBytes(parsed.data)) };
}

function isNewer(value: unknown): value is { version: number } {
  return typeof value === 'object' && value !== null && 'version' in value && typeof value.version === 'number' && value.version > documentVersion;
}
