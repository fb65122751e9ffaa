import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { isMessageCode } from '@yardfall/text';
import { expect, test } from 'vitest';
import { carePlan } from './care.rules.ts';

const site = (name: string) => JSON.parse(readFileSync(new URL(`../../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')) as DesignDocument;

test('a pumped site has the basket, the bucket, the alarm and the yearly pump-down', () => {
  const plan = carePlan(site('tern-hollow'));
  expect(plan.map(({ code, who }) => `${code.split('.')[2] ?? ''} ${who}`)).toEqual([
    'basket customer', 'bucket customer', 'alarm customer', 'emitter customer', 'vacuum company', 'pumpDown company', 'flush company', 'pumpAge customer', 'levels company', 'grade customer',
  ]);
  expect(plan.flatMap(({ code, when }) => [code, when]).filter((code) => !isMessageCode(code))).toEqual([]);
});

test('a site without a pump is asked nothing about one', () => {
  const codes = carePlan(site('ridgeback')).map(({ code }) => code);
  expect(codes).toEqual(['portal.care.basket', 'portal.care.flush', 'portal.care.levels', 'portal.care.grade']);
});

test('a battery is tested where there is one', () => {
  const document = site('tern-hollow');
  const electrical = document.construction.electrical;
  if (electrical === null) throw new Error('the site has no power');
  const backed: DesignDocument = { ...document, construction: { ...document.construction, electrical: { ...electrical, backup: 'battery' } } };
  expect(carePlan(backed).map(({ code }) => code)).toContain('portal.care.battery');
});
