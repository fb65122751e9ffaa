import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { sha256 } from './work.ts';

/** Names of the files that a folder of the service's data holds, at any depth. */
export function filesIn(dataDir: string, folder: 'photos' | 'uploads'): string[] {
  try {
    return readdirSync(path.join(dataDir, folder), { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => entry.name).sort();
  } catch {
    return []; // nothing was ever put there
  }
}

/** Files among the photos whose bytes are not those of their name, which is a SHA-256. */
export function halvesIn(dataDir: string): string[] {
  const folder = path.join(dataDir, 'photos');
  if (!existsSync(folder)) return [];
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return files.filter(({ parentPath, name }) => sha256(readFileSync(path.join(parentPath, name))) !== name).map(({ name }) => name);
}
