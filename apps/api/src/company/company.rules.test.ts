import { defaultSettings } from '@yardfall/contracts';
import { expect, it } from 'vitest';
import { readSettings, writeSettings } from './company.rules.ts';

const stored = (value: object): Uint8Array => Buffer.from(JSON.stringify(value), 'utf8');

it('reads settings of an earlier version: what came later takes its default, what was given up is left behind', () => {
  const { limits: _, ...earlier } = { ...defaultSettings, warrantyMonths: 36 };
  expect(readSettings(stored({ ...earlier, freeboard: 0.05 }))).toEqual({ ...defaultSettings, warrantyMonths: 36 });
});

it('reads what it wrote', () => {
  expect(readSettings(writeSettings({ ...defaultSettings, invitationDays: 3 }))).toEqual({ ...defaultSettings, invitationDays: 3 });
});
