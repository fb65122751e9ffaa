import { callees, diagnosisCauses as causes, diagnosisReferrals as referrals, diagnosisSteps, notDone, stepFamilies, systemKinds } from '@yardfall/contracts';
import { isMessageCode, messages } from '@yardfall/text';
import { describe, expect, test } from 'vitest';

const missing = (codes: readonly string[]) => codes.filter((code) => !isMessageCode(code));
const all = Object.keys(messages);

describe('every step of the diagnosis', () => {
  test('is asked in words, says how, and has words for every pick', () => {
    expect(missing(diagnosisSteps.flatMap(({ id }) => [`surveys.step.${id}`, `surveys.step.${id}.how`]))).toEqual([]);
    const picks = diagnosisSteps.flatMap(({ id, picks: list, ...step }) => list.map((pick) => {
      if (pick === notDone) return 'surveys.pick.notDone';
      return 'none' in step && pick === step.none ? 'surveys.pick.none' : `surveys.pick.${id}.${pick}`;
    }));
    expect(missing(picks)).toEqual([]);
    expect(missing(stepFamilies.map((family) => `surveys.family.${family}`))).toEqual([]);
  });
  test('has cautions that are written, each with its source', () => {
    const cautions = [...new Set(diagnosisSteps.flatMap((step) => step.cautions))];
    expect(cautions.length).toBeGreaterThan(5);
    expect(missing(cautions.flatMap((name) => [`ui.caution.${name}`, `ui.caution.${name}.source`]))).toEqual([]);
  });
});

describe('what a diagnosis comes to', () => {
  test('is named for the trade and for the homeowner, and says what it leads to unless it is a leak', () => {
    expect(missing(causes.flatMap(({ id }) => [`surveys.cause.${id}`, `surveys.cause.${id}.home`]))).toEqual([]);
    expect(missing(causes.filter(({ id }) => !id.startsWith('leak')).map(({ id }) => `surveys.cause.${id}.then`))).toEqual([]);
  });
  test('says whom to call and what is built in which order', () => {
    expect(missing(referrals.map(({ id }) => `surveys.refer.${id}`))).toEqual([]);
    expect(missing(callees.map((who) => `surveys.callee.${who}`))).toEqual([]);
    expect(missing(systemKinds.map((kind) => `surveys.kit.${kind}`))).toEqual([]);
  });
  test('no words are left of a step or pick that is not there', () => {
    const known = new Set(diagnosisSteps.map(({ id }) => id as string));
    const picks = new Set(diagnosisSteps.flatMap(({ id, picks: list }) => list.map((pick) => `${id}.${pick}`)));
    expect(all.filter((code) => code.startsWith('surveys.step.') && !known.has(code.split('.')[2] ?? ''))).toEqual([]);
    expect(all.filter((code) => /^surveys\.pick\.\w+\.\w+$/.test(code) && !picks.has(code.slice('surveys.pick.'.length)))).toEqual([]);
  });
  test('the homeowner reads short sentences', () => {
    const long = causes.flatMap(({ id }) => {
      const message = messages[`surveys.cause.${id}.home`];
      return [message.en, message.es].filter((text) => text.split(/[.!?]\s/).some((sentence) => sentence.split(/\s+/).length > 15));
    });
    expect(long).toEqual([]);
  });
});
