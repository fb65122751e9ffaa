import { groupText, holdPointRules, holdPointText, itemGroups, itemText, type ChecklistItem } from '@yardfall/contracts';
import type { Text } from '../../../lib/reader.tsx';

type Printable = Pick<ChecklistItem, 'key' | 'template' | 'group' | 'partName' | 'requirement'>;

export interface PrintedLine {
  readonly key: string;
  readonly what: string;
  readonly part: string | null;
  readonly good: string;
  readonly photo: string | null;
  /** Who signs, in words. */
  readonly signers: readonly string[];
  /** Hold points that have to be open before it, in words. */
  readonly after: readonly string[];
}

export interface PrintedGroup {
  readonly heading: string;
  readonly lines: readonly PrintedLine[];
}

/** The install list as it goes on paper: every step of this job in the order of the work, and nothing that does not apply. */
export function printedList(items: readonly Printable[], say: Text['say']): readonly PrintedGroup[] {
  return itemGroups.flatMap((group) => {
    const own = items.filter((item) => item.group === group);
    return own.length === 0 ? [] : [{ heading: say(groupText(group, own.map(({ template }) => template))), lines: own.map((item) => line(item, items, say)) }];
  });
}

function line({ key, template, partName, requirement }: Printable, all: readonly Printable[], say: Text['say']): PrintedLine {
  const words = (sentence: 'what' | 'acceptance' | 'photo') => say(itemText(requirement, sentence), requirement.params);
  const before = holdPointRules.filter((rule) => rule.guards.includes(template) && all.some((other) => rule.items.includes(other.template)));
  return {
    key, part: partName, what: words('what'), good: words('acceptance'), photo: requirement.evidence.includes('photo') ? words('photo') : null,
    signers: requirement.signers.map((signer) => say(`checklists.signer.${signer}`)), after: before.map(({ id }) => say(holdPointText(id))),
  };
}
