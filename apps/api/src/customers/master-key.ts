import { randomBytes } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const fileName = 'master.key';

/**
 * The key that wraps the keys of all customers: SECRET_KEY (32 bytes as hex or base64), or a file of the data folder that
 * is made on first start. Without it no name, phone or address can be read again, so a backup must hold it.
 */
export function readMasterKey(secret: string | undefined, dataDir: string): Uint8Array<ArrayBuffer> {
  if (secret !== undefined && secret !== '') return decode(secret, 'SECRET_KEY');
  const path = join(dataDir, fileName);
  mkdirSync(dataDir, { recursive: true });
  try {
    writeFileSync(path, randomBytes(32).toString('base64') + '\n', { flag: 'wx', mode: 0o600 });
  } catch (error) {
    if (!isExists(error)) throw error;
  }
  return decode(readFileSync(path, 'utf8').trim(), path);
}

function decode(text: string, where: string): Uint8Array<ArrayBuffer> {
  const bytes = /^[0-9a-fA-F]{64}$/.test(text) ? Buffer.from(text, 'hex') : Buffer.from(text, 'base64');
  if (bytes.length !== 32) throw new Error(`${where} must hold 32 bytes, as 64 hex digits or as base64`);
  return new Uint8Array(bytes);
}

function isExists(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'EEXIST';
}
