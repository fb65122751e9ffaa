import { type BuiltItem, groupOf, type Requirement, rulesOf, rulesVersion } from '@yardfall/contracts';

/** A step as the list of a job in the ground has it. */
export interface EarlierStep {
  readonly key: string;
  readonly template: string;
  readonly part: string | null;
  readonly holdPoint: string | null;
  /** Something was recorded of it. */
  readonly begun: boolean;
  readonly requirement: Requirement;
  readonly requirementBytes: Uint8Array<ArrayBuffer>;
  readonly requirementHash: string;
}

/**
 * The steps of a job that is built anew, without what our own rules have changed since: a step that was begun under earlier rules is asked as it was,
 * unless the design asks something else of it now. So what was proven stays proven, whatever release of the program wrote the list.
 *
 * @param built the steps by the present rules, for the design as it is now
 * @param then hash of each step by the present rules for the design as it was, by its key
 */
export function inEarlierForm(built: readonly BuiltItem[], before: readonly EarlierStep[], then: ReadonlyMap<string, string>): readonly BuiltItem[] {
  const old = before.filter(({ requirement }) => rulesOf(requirement) < rulesVersion);
  const other = new Map([...new Set(built.map(({ template }) => template))].map((template) => [template, otherwiseDivided(template, built, old)]));
  return built.flatMap((item) => {
    const divided = other.get(item.template) ?? [];
    if (divided.length > 0) return item === built.find(({ template }) => template === item.template) ? divided.map((step) => asItWas(item, step)) : isNew(item, divided) ? [item] : [];
    const step = old.find(({ key }) => key === item.key);
    return step?.begun === true && then.get(item.key) === item.requirementHash ? [asItWas(item, step)] : [item];
  });
}

/** The steps of a template that were begun at other things than it is asked at now: of the whole job, say, and now of each cut. */
function otherwiseDivided(template: string, built: readonly BuiltItem[], old: readonly EarlierStep[]): readonly EarlierStep[] {
  const parts = new Set(built.map(({ part }) => part));
  const own = old.filter((step) => step.template === template && (step.part === null || parts.has(step.part)));
  const keys = new Set(built.map(({ key }) => key));
  return own.some(({ key, begun }) => begun && !keys.has(key)) ? own : [];
}

/** A part or line that no earlier step is about; a step of the whole job is about all that there was. */
function isNew(item: BuiltItem, divided: readonly EarlierStep[]): boolean {
  if (divided.some(({ key, template }) => key === template)) return item.requirement.measures.some(({ name }) => name.includes(':') && !divided.some(({ requirement }) => requirement.measures.some((one) => one.name === name)));
  return item.part !== null && !divided.some(({ part }) => part === item.part);
}

function asItWas(item: BuiltItem, { key, template, part, holdPoint, requirement, requirementBytes, requirementHash }: EarlierStep): BuiltItem {
  return { ...item, key, template, group: groupOf(template), part, holdPoint, requirement, requirementBytes, requirementHash };
}
