import { readFileSync } from 'node:fs';
import { type DesignDocument, evaluate, type Evaluation } from '@yardfall/calc';
import { isMessageCode, render } from '@yardfall/text';
import { describe, expect, test } from 'vitest';
import { isExpired, offerTexts, renderOffer } from './offer.rules.ts';
import { whyTexts } from './why.rules.ts';

const site = (name: string) => JSON.parse(readFileSync(new URL(`../../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')) as DesignDocument;
const ternHollow = site('tern-hollow');
const evaluation = evaluate(ternHollow);
const why = whyTexts(ternHollow, evaluation, 'Ines Calloway');
const codes = why.map(({ code }) => code.replace('portal.why.', ''));
const paramOf = (code: string, name: string) => why.find((one) => one.code === `portal.why.${code}`)?.params[name];

describe('why Tern Hollow is built so', () => {
  test('every text exists in both languages and every figure in it is a parameter', () => {
    for (const { code, params } of why) {
      expect(isMessageCode(code), code).toBe(true);
      for (const language of ['en', 'es'] as const) expect(render(language, 'us', code, params)).not.toMatch(/undefined|NaN|-\d/);
    }
  });
  test('the numbers are the engine\'s', () => {
    const at25 = evaluation.results.freeboards.find((one) => one.returnPeriod === 25);
    expect(paramOf('freeboard', 'height')).toBe(at25?.onTwin);
    expect(paramOf('band', 'low')).toBe(at25?.lower);
    expect(paramOf('band', 'high')).toBe(at25?.upper);
    expect(paramOf('now.over', 'minutes')).toBe((at25?.minutesOverSillWithoutSystem ?? NaN) * 60);
    expect(paramOf('stillIn.power', 'time')).toBe(evaluation.results.outage?.longestSafe);
    const pump = evaluation.results.pumps[0];
    expect(paramOf('promise.pump', 'flow')).toBe((pump?.dutyAtOff.flow ?? NaN) - (pump?.weepFlow ?? NaN));
    expect(paramOf('promise.pump', 'within')).toBe(0.1);
    expect(paramOf('tooHigh', 'shortfall')).toBeCloseTo(1.07 * 0.3048, 2);
  });
  test('25 years is about 1 in 3 over ten years', () => {
    expect([paramOf('storm', 'years'), paramOf('tenYearsOneIn', 'n')]).toEqual([25, 3]);
  });
  test('roof first, then the pump, and both what-ifs unasked', () => {
    expect(codes.slice(0, 4)).toEqual(['now.over', 'tooHigh', 'roofAway', 'pumpRest']);
    expect(codes.some((code) => code.startsWith('powerOut.'))).toBe(true);
    expect(codes.some((code) => code.startsWith('gutter.'))).toBe(true);
    expect(codes).toContain('guessed.rain');
  });
  test('the person who answers for the numbers is named', () => {
    expect(paramOf('answers', 'name')).toBe('Ines Calloway');
    expect(whyTexts(ternHollow, evaluation, '').some(({ code }) => code === 'portal.why.answers')).toBe(false);
  });
});

describe('other answers', () => {
  test('a design without a pump says so and asks nothing about power', () => {
    const ridgeback = site('ridgeback');
    const texts = whyTexts(ridgeback, evaluate(ridgeback), '').map(({ code }) => code);
    expect(texts).toContain('portal.why.byItself');
    expect(texts.some((code) => code.includes('power'))).toBe(false);
    expect(texts).toContain('portal.why.promise.gravity');
  });
  const bent = (change: object): Evaluation => ({ ...evaluation, results: { ...evaluation.results, freeboards: evaluation.results.freeboards.map((one) => ({ ...one, ...change })) } });
  test('a negative freeboard is minutes over the sill and never a height', () => {
    const texts = whyTexts(ternHollow, bent({ onTwin: -0.02, lower: -0.03, minutesOverSill: 12 }), '');
    expect(texts).toContainEqual({ code: 'portal.why.over', params: { minutes: 720 } });
    expect(texts.some(({ code }) => code === 'portal.why.freeboard' || code === 'portal.why.band')).toBe(false);
  });
  test('a band that reaches over the sill says that it could come in', () => {
    const texts = whyTexts(ternHollow, bent({ onTwin: 0.01, lower: -0.01, upper: 0.03 }), '');
    expect(texts).toContainEqual({ code: 'portal.why.bandOver', params: { high: 0.03 } });
  });
  test('2 years is nearly sure over ten', () => {
    const often = { ...ternHollow, rain: { ...ternHollow.rain, designReturnPeriod: 2 } };
    expect(whyTexts(often, evaluation, '')).toContainEqual({ code: 'portal.why.tenYearsOfTen', params: { n: 10 } });
  });
});

describe('the offer', () => {
  const texts = offerTexts({
    number: 1, company: 'Yardfall Demo Drainage', customerName: 'Marisol Pruett', address: '118 Tern Hollow Ln', message: '', designName: 'Pump and roof line', revisionNumber: 1,
    documentSha256: 'ab'.repeat(32), document: ternHollow, why, price: 1_358_885, validUntil: '2026-04-01',
  });
  test('is the same bytes every time, in the language of the customer', () => {
    const english = Buffer.from(renderOffer(texts, 'en')).toString('utf8');
    expect(Buffer.from(renderOffer(texts, 'en')).toString('utf8')).toBe(english);
    expect(english).toContain('$13,588.85');
    expect(english).toContain('Apr 1, 2026');
    expect(Buffer.from(renderOffer(texts, 'es')).toString('utf8')).toContain('Oferta 1 de Yardfall Demo Drainage');
  });
  test('says nothing of cost or margin', () => {
    expect(JSON.stringify(texts)).not.toMatch(/margin|markup|cost/i);
  });
  test('counts its last day whole', () => {
    expect(isExpired('2026-04-01', '2026-04-01')).toBe(false);
    expect(isExpired('2026-04-01', '2026-04-02')).toBe(true);
  });
});
