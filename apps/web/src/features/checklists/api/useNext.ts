import { useMe } from '../../../hooks/useMe.ts';
import { nextOf } from '../model/next.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';

/** The next step of this list for who holds the phone. */
export function useNext(view: ChecklistView | null, except: string | null = null): ItemView | null {
  const { me } = useMe();
  return view === null ? null : nextOf(view, except, me?.roles);
}
