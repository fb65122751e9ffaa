import { readFileSync } from 'node:fs';
import type { DesignDocument, Evaluation, Finding, OutletQuestions } from '@yardfall/calc';
import { describe, expect, test } from 'vitest';
import { cautionAt, countsOf, mayIssue, stillAccepted, type StoredAcknowledgement } from './verdict.rules.ts';

const finding = (code: string, severity: Finding['severity'], at: string | null = null, params = {}): Finding =>
  ({ code, check: 'L5', severity, at, params, limit: {}, source: 'test', remedy: null });
const evaluation = (...findings: Finding[]) => ({ findings, results: { referrals: [] as string[] } }) as unknown as Evaluation;
const accepted = (code: string, at: string | null = null): StoredAcknowledgement => ({ code, at, memberId: 'm', by: 'Theo', when: '2026-01-01T00:00:00Z', note: 'seen' });

describe('a design may be issued', () => {
  test('when nothing stands against it; a note asks nothing of anyone', () => {
    expect(mayIssue(evaluation(finding('a', 'note')), [])).toEqual({ kind: 'free' });
  });
  test('not with a stop, and the stop is told before the cautions', () => {
    const verdict = mayIssue(evaluation(finding('a', 'caution'), finding('b', 'stop', 'P1')), []);
    expect(verdict).toMatchObject({ kind: 'stopped', findings: [{ code: 'b', at: 'P1' }] });
  });
  test('not where an engineer is needed, whatever else is in order', () => {
    expect(mayIssue(evaluation(finding('r', 'refer')), [])).toMatchObject({ kind: 'referred' });
  });
  test('with each caution accepted at its own place', () => {
    const two = evaluation(finding('a', 'caution', 'P1'), finding('a', 'caution', 'P2'));
    expect(mayIssue(two, [accepted('a', 'P1')])).toMatchObject({ kind: 'unacknowledged', findings: [{ at: 'P2' }] });
    expect(mayIssue(two, [accepted('a', 'P1'), accepted('a', 'P2')])).toEqual({ kind: 'free' });
  });
});

describe('what was accepted', () => {
  test('stands while the caution has the same figures', () => {
    const same = evaluation(finding('a', 'caution', 'P1', { share: 0.9 }));
    expect(stillAccepted(same, same, [accepted('a', 'P1')])).toHaveLength(1);
  });
  test('falls when the figures got worse, or the caution is gone, or was never judged', () => {
    const before = evaluation(finding('a', 'caution', 'P1', { share: 0.9 }));
    expect(stillAccepted(before, evaluation(finding('a', 'caution', 'P1', { share: 0.95 })), [accepted('a', 'P1')])).toEqual([]);
    expect(stillAccepted(before, evaluation(), [accepted('a', 'P1')])).toEqual([]);
    expect(stillAccepted(null, before, [accepted('a', 'P1')])).toEqual([]);
  });
  test('is a caution and nothing else', () => {
    expect(cautionAt(evaluation(finding('a', 'stop')), 'a', null)).toBeNull();
  });
});

describe('a design is provisional', () => {
  const site = JSON.parse(readFileSync(new URL('../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
  const outlets = site.system.parts.flatMap((part) => (part.kind === 'outlet' ? [part] : []));
  const keys = Object.keys(outlets[0]?.questions ?? {}) as (keyof OutletQuestions)[];
  const answered = (question: keyof OutletQuestions | null, answer: 'unknown' | 'no'): DesignDocument => ({
    ...site, system: { parts: site.system.parts.map((part) => (part.kind === 'outlet' && part.id === outlets.at(-1)?.id && question !== null ? { ...part, questions: { ...part.questions, [question]: answer } } : part)) },
  });

  test('not while every question of every outlet is answered', () => {
    expect(keys).toHaveLength(10);
    expect(countsOf(answered(null, 'unknown'), evaluation()).provisional).toBe(false);
  });

  test.each(keys)('while %s is unanswered at any outlet; a plain no is an answer', (question) => {
    expect(countsOf(answered(question, 'unknown'), evaluation()).provisional).toBe(true);
    expect(countsOf(answered(question, 'no'), evaluation()).provisional).toBe(false);
  });
});
