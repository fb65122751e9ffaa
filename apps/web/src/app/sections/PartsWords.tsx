import { useText, type Text } from '../../lib/reader.tsx';
import type { PartsNow } from '../../features/checklists/index.ts';

const told = ['built', 'next', 'held'] as const;

/** What is built, next and held, each with its parts by name, and how many are to come; a state that no part has is left out. */
export function partsWords({ t }: Pick<Text, 't'>, { states, names }: PartsNow): readonly string[] {
  const toCome = Object.values(states).filter((state) => state === 'notYet').length;
  const named = told.flatMap((state) => {
    const parts = Object.keys(states).filter((part) => states[part] === state).map((part) => names[part] ?? part);
    return parts.length === 0 ? [] : [t(`checklists.parts.${state}`, { parts: parts.join(', ') })];
  });
  return toCome === 0 ? named : [...named, t('checklists.parts.notYet', { n: toCome })];
}

export function PartsWords({ parts }: { readonly parts: PartsNow }) {
  const text = useText();
  return <>{partsWords(text, parts).map((line) => <span key={line}>{line}</span>)}</>;
}
