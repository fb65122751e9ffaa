import type { KeyboardEvent } from 'react';
import { useText } from '../../../../lib/reader.tsx';
import { isEmpty, keyOf, pressed, shownOf, type Entry } from '../../model/keypad.ts';

interface KeyDisplayProps {
  readonly label: string;
  readonly entry: Entry;
  /** What the figure gives, or what it is. */
  readonly note: string;
  readonly placeholder: string;
  /** The big keys write here. */
  readonly writing: boolean;
  readonly onWrite: () => void;
  readonly onEntry: (entry: Entry) => void;
  readonly onEnter: () => void;
}

/** What the keys have written. A real keyboard writes here too; a phone opens none. */
export function KeyDisplay({ label, entry, note, placeholder, writing, onWrite, onEntry, onEnter }: KeyDisplayProps) {
  const { q } = useText();
  const shown = entry.held === null ? shownOf(entry) : q(entry.unit === 'inch' ? 'tape' : 'level', entry.held);
  const typed = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const key = keyOf(event.key, entry.unit);
    if (event.key !== 'Enter' && key === null) return;
    event.preventDefault();
    if (key === null) onEnter();
    else onEntry(pressed(entry, key));
  };
  return (
    <div className={writing ? 'yard-display yard-writing' : 'yard-display'}>
      <input className="yard-figure" aria-label={label} readOnly inputMode="none" value={isEmpty(entry) ? '' : shown} placeholder={placeholder} onFocus={onWrite} onKeyDown={typed} />
      <output className="yard-gives">{note}</output>
    </div>
  );
}
