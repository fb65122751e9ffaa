import type { SurveyFact } from '@yardfall/contracts';
import { describe, expect, it } from 'vitest';
import { type Circumstances, judge } from './judge.rules.ts';

const id = '00000000-0000-7000-8000-000000000001';
const job = '00000000-0000-7000-8000-000000000002';
const fact: SurveyFact = {
  id, deviceId: id, seq: 1, deviceTime: '2026-03-02T10:00:00Z', factVersion: 1, jobId: job, surveyId: id, entry: `drainTest:${id}`, seen: [], kind: 'struck', reason: '',
};
const calm: Circumstances = { deviceCutOff: false, roles: ['estimator'], jobId: job, surveyJobId: null, jobClosed: false, entryKnown: false, entries: 0 };
const outcome = (changes: Partial<Circumstances> = {}) => {
  const { verdict, reason } = judge(fact, { ...calm, ...changes });
  return reason === null ? verdict : `${verdict} ${reason}`;
};

describe('a stored survey fact', () => {
  it('counts when nothing speaks against it', () => {
    expect([outcome(), outcome({ surveyJobId: job }), outcome({ roles: ['crew', 'owner'] })]).toEqual(['kept', 'kept', 'kept']);
  });
  it('of a phone that was cut off is quarantined before anything else is looked at', () => {
    expect(outcome({ deviceCutOff: true, jobId: id, roles: ['crew'] })).toBe('quarantined deviceCutOff');
  });
  it('of another job, or of a survey of another job, is refused', () => {
    expect([outcome({ jobId: id }), outcome({ surveyJobId: id })]).toEqual(['refused otherJob', 'refused otherJob']);
  });
  it('of somebody who may not survey is refused', () => {
    expect(outcome({ roles: ['crew'] })).toBe('refused officeOnly');
  });
  it('of a job that is over is late', () => {
    expect(outcome({ jobClosed: true })).toBe('late jobClosed');
  });
  it('of the twenty-first hose test is refused, and one of the twenty is not', () => {
    expect([outcome({ entries: 19 }), outcome({ entries: 20 }), outcome({ entries: 20, entryKnown: true })]).toEqual(['kept', 'refused surveyFull', 'kept']);
  });
});
