import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { AuditEntry } from '@yardfall/contracts';
import { isMessageCode, messages, render } from '@yardfall/text';
import { describe, expect, test } from 'vitest';
import { sentenceOf } from './sentence.ts';

const api = path.resolve(import.meta.dirname, '../../../../../api/src');

const sources = readdirSync(api, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts') && !file.startsWith('generated'))
  .map((file) => readFileSync(path.join(api, file), 'utf8'))
  .join('\n');

/**
 * Every action is given right after the transaction, the actor and whatever names stand between, as a text or as the name
 * of a constant; queued work has names of its own.
 */
const written = [...sources.matchAll(/(?<!enqueue\()\btx, (?:\w+, )+'([a-z]\w*\.[a-z]\w*)'/gi)].map((match) => match[1] ?? '');
const named = [...sources.matchAll(/\baudit\(tx, \w+, (\w+)/g)].flatMap(([, name = '']) => [...sources.matchAll(new RegExp(`const ${name} = '([\\w.]+)'`, 'g'))].map((match) => match[1] ?? ''));
const actions = [...new Set([...written, ...named])].sort();

const entry = (action: string, params: AuditEntry['params']): AuditEntry => ({
  id: '0197f000-0000-7000-8000-000000000001', at: '2031-03-04T15:30:00Z', actorKind: 'member', actorId: null, actorName: 'Ines', jobId: null, action, subjectId: null, params, sealed: true,
});
const said = (action: string, params: AuditEntry['params']) => {
  const { code, params: filled } = sentenceOf(entry(action, params), (role) => role.toUpperCase());
  return render('en', 'us', code, filled);
};

describe('the sentences of the trail', () => {
  test('stand for every action that the service records', () => {
    expect(actions.length).toBeGreaterThan(35);
    expect(actions.filter((action) => !isMessageCode(`audit.action.${action}`))).toEqual([]);
  });

  test('stand for nothing else', () => {
    const told = Object.keys(messages).filter((code) => code.startsWith('audit.action.')).map((code) => code.slice('audit.action.'.length));
    expect(told.filter((action) => !actions.includes(action))).toEqual([]);
  });

  test('name stages, roles and verdicts in words', () => {
    expect(said('job.moved', { from: 'visit', to: 'design' })).toBe('Job moved from "site visited" to "in design"');
    expect(said('member.invited', { roles: 'owner,crew' })).toBe('Invited a member as OWNER, CREW');
    expect(said('proof.recorded', { verdict: 'fail', difference: -0.2 })).toBe('Recorded a pump-down: fails');
    expect(said('job.assigned', { members: 'estimator:a,crew:b' })).toBe('Put 2 people on the job');
  });

  test('say so when some facts do not count', () => {
    expect(said('checklist.recorded', { facts: 3, kept: 3 })).toBe('Recorded 3 facts on the checklist');
    expect(said('checklist.recorded', { facts: 3, kept: 1 })).toBe('Recorded 3 facts on the checklist; only 1 counts');
  });

  test('leave an absent figure empty instead of failing', () => {
    expect(said('checklist.waived', { item: null, holdPoint: null })).toBe('Waived ');
  });
});
