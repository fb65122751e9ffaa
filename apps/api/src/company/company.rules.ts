import { checkOverrides } from '@yardfall/calc';
import { type CompanyChecklist, type CompanyLimit, CompanySettings, defaultSettings, ruleFault, type WantedChecklist, type WantedLimit } from '@yardfall/contracts';
import { DomainError } from '../common/errors.ts';

/** Settings are stored whole; one that a later version added takes its default, one that it gave up is left behind. */
export function readSettings(stored: Uint8Array): CompanySettings {
  const value = JSON.parse(Buffer.from(stored).toString('utf8')) as Record<string, unknown>;
  return CompanySettings.parse(Object.fromEntries(Object.entries({ ...defaultSettings, ...value }).filter(([key]) => Object.hasOwn(defaultSettings, key))));
}

export function writeSettings(settings: CompanySettings): Uint8Array<ArrayBuffer> {
  return new Uint8Array(Buffer.from(JSON.stringify(settings), 'utf8'));
}

/** Limits as they are stored: one that did not change keeps who set it and when. Throws a DocumentError for one that cannot be set so. */
export function stampedLimits(wanted: readonly WantedLimit[], held: readonly CompanyLimit[], by: string, at: string): CompanyLimit[] {
  const limits = wanted.map((limit) => held.find((own) => own.limit === limit.limit && own.pass === limit.pass && own.fail === limit.fail && own.why === limit.why) ?? { ...limit, by, at });
  checkOverrides(limits);
  return limits;
}

/** Rules of the checklist as they are stored: a change that is as it was keeps who made it and when. Throws for one that would weaken a hold point without a reason, or undo it. */
export function stampedChecklist({ changes, own }: WantedChecklist, held: CompanyChecklist, by: string, at: string): CompanyChecklist {
  const fault = ruleFault({ changes, own });
  if (fault !== null) throw new DomainError('checklist.rule', { item: fault.item, fault: `errors.checklist.rule.${fault.fault}` });
  const same = (change: WantedChecklist['changes'][number]) => held.changes.find(({ by: _by, at: _at, ...one }) => JSON.stringify(one) === JSON.stringify(change));
  return { own, changes: changes.map((change) => same(change) ?? { ...change, by, at }) };
}
