import { factsOf } from './evidence.ts';
import type { StepDraft } from './draft.ts';
import type { ItemView } from './view.ts';

/** Who looked the last time most likely looks again: of a step that is asked for each day the name stands there already. */
export function withLastName<T extends { readonly draft: StepDraft }>(typing: T, view: ItemView): T {
  if (view.askedOn === null) return typing;
  const last = (view.item.requirement.texts ?? []).flatMap((name): [string, string][] => {
    const told = view.missing.includes(`text:${name}`) ? factsOf(view, 'written').findLast((fact) => fact.name === name)?.text : undefined;
    return told === undefined ? [] : [[name, told]];
  });
  return { ...typing, draft: { ...typing.draft, texts: { ...Object.fromEntries(last), ...typing.draft.texts } } };
}
