import type { AuditEntry } from '@yardfall/contracts';
import type { Params } from '@yardfall/text';

export interface Sentence {
  readonly code: string;
  readonly params: Params;
}

/** The sentence of a trail entry. What the entry keeps as a word of the service becomes a code of the catalogues. */
export function sentenceOf({ action, params }: AuditEntry, roleName: (role: string) => string): Sentence {
  const plain = Object.fromEntries(Object.entries(params).map(([name, value]) => [name, value ?? '']));
  // Facts that do not count are kept all the same, and said.
  const partly = action === 'checklist.recorded' && Number(plain.kept) < Number(plain.facts);
  return { code: partly ? 'audit.recordedPartly' : `audit.action.${action}`, params: { ...plain, ...termsOf(action, plain, roleName) } };
}

function termsOf(action: string, params: Params, roleName: (role: string) => string): Params {
  switch (action) {
    case 'job.moved':
      return { from: `jobs.stage.${String(params.from)}`, to: `jobs.stage.${String(params.to)}` };
    case 'job.assigned':
      return { count: listed(params.members).length };
    case 'member.invited':
    case 'member.updated':
      return { roles: listed(params.roles).map(roleName).join(', ') };
    case 'proof.recorded':
      return { result: `audit.result.${String(params.verdict)}` };
    default:
      return {};
  }
}

const listed = (value: Params[string] | undefined): string[] => String(value ?? '').split(',').filter((part) => part !== '');
