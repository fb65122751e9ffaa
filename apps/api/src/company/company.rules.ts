import { CompanySettings, defaultSettings } from '@yardfall/contracts';

/** Settings are stored whole; one that a later version added takes its default. */
export function readSettings(stored: Uint8Array): CompanySettings {
  const value = JSON.parse(Buffer.from(stored).toString('utf8')) as Record<string, unknown>;
  return CompanySettings.parse({ ...defaultSettings, ...value });
}

export function writeSettings(settings: CompanySettings): Uint8Array<ArrayBuffer> {
  return new Uint8Array(Buffer.from(JSON.stringify(settings), 'utf8'));
}
