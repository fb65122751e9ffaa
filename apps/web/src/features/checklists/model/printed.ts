import { groupText, holdPointRules, holdPointText, itemGroups, itemText, measureCode, type ChecklistItem } from '@yardfall/contracts';
import type { Text } from '../../../lib/reader.tsx';
import type { Measure } from './judge.ts';
import { nameAt } from './sentences.ts';

type Printable = Pick<ChecklistItem, 'key' | 'template' | 'group' | 'partName' | 'holdPoint' | 'requirement'>;

/** What is read at a step, with a blank on the paper. */
export interface PrintedFigure {
  readonly measure: Measure;
  readonly label: string;
  /** What it has to be: the designed level, its limits, or nothing where it is only written down. */
  readonly limit: 'target' | 'limits' | null;
}

/** One step of the job. */
export interface PrintedStep {
  readonly key: string;
  readonly part: string | null;
  readonly figures: readonly PrintedFigure[];
}

/** Steps that are worded alike stand together, with a box for each part. */
export interface PrintedLine {
  readonly steps: readonly PrintedStep[];
  readonly what: string;
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
    if (own.length === 0) return [];
    return [{ heading: say(groupText(group, own.map(({ template }) => template))), lines: together(own.map((item) => line(item, items, say))) }];
  });
}

function line(item: Printable, all: readonly Printable[], say: Text['say']): PrintedLine {
  const { key, template, partName, requirement } = item;
  const words = (sentence: 'what' | 'acceptance' | 'photo') => say(itemText(requirement, sentence), requirement.params);
  // On paper a look is asked before the first work in the trench; digging on waits for the later ones.
  const before = holdPointRules.filter((rule) => rule.again !== true && rule.guards.includes(template) && all.some((other) => rule.items.includes(other.template) && (rule.named === undefined || other.holdPoint === rule.named)));
  return {
    steps: [{ key, part: partName, figures: figures(item, say) }],
    what: words('what'), good: words('acceptance'), photo: requirement.evidence.includes('photo') ? words('photo') : null,
    signers: requirement.signers.map((signer) => say(`checklists.signer.${signer}`)), after: before.map(({ id }) => say(holdPointText(id))),
  };
}

/** The fall of a pipe follows from its levels. */
function figures({ requirement }: Printable, say: Text['say']): readonly PrintedFigure[] {
  const hasLevels = requirement.measures.some(({ name }) => name.startsWith('invert'));
  return requirement.measures.filter(({ name }) => name !== 'slope' || !hasLevels).map((measure) => {
    const [, at] = measure.name.split(':');
    const name = measureCode(measure.name);
    const part = requirement.params[`name:${at ?? ''}`];
    const label = at === undefined ? say(name) : say('checklists.measureAt', { measure: name, detail: typeof part === 'string' ? part : nameAt(requirement, at, say) });
    return { measure, label, limit: limitOf(measure) };
  });
}

function limitOf({ name, quantity, min, max }: Measure): PrintedFigure['limit'] {
  // A tape to a buried part has whatever length it has; what is checked is there or not.
  if (name.startsWith('tie') || quantity === 'check' || (min === null && max === null)) return null;
  return quantity === 'level' ? 'target' : 'limits';
}

function together(lines: readonly PrintedLine[]): readonly PrintedLine[] {
  const worded = ({ steps: _, ...words }: PrintedLine) => JSON.stringify(words);
  return lines.reduce<readonly PrintedLine[]>((done, next) => {
    const last = done.at(-1);
    return last !== undefined && worded(last) === worded(next) ? [...done.slice(0, -1), { ...last, steps: [...last.steps, ...next.steps] }] : [...done, next];
  }, []);
}
