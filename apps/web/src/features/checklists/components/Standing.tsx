import { holdPointText } from '@yardfall/contracts';
import { isMessageCode } from '@yardfall/text';
import { useText, type Text } from '../../../lib/reader.tsx';
import { standingOf } from '../model/standing.ts';
import type { ItemView } from '../model/view.ts';

/** The words of a hold point; its number where an older record has one without words. */
export function holdPointWords(say: Text['say'], id: string): string {
  const code = holdPointText(id);
  return isMessageCode(code) ? say(code) : id;
}

/** How a step stands, in words: a step that is held says after what it comes. */
export function StandingWords({ view, next }: { readonly view: ItemView; readonly next: string | null }) {
  const { t, say } = useText();
  const standing = standingOf(view, next);
  if (standing === 'held') return t('checklists.held', { holdPoints: view.heldBy.map(({ holdPoint }) => holdPointWords(say, holdPoint)).join(', ') });
  return t(standing === 'next' ? 'checklists.next' : `checklists.state.${standing}`);
}
