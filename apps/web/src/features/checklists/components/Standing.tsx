import { holdPointText } from '@yardfall/contracts';
import { isMessageCode } from '@yardfall/text';
import { useText, type Text } from '../../../lib/reader.tsx';
import { standingOf } from '../model/standing.ts';
import { isSettled, type ItemView } from '../model/view.ts';

/** The words of a hold point; its number where an older record has one without words. */
export function holdPointWords(say: Text['say'], id: string): string {
  const code = holdPointText(id);
  return isMessageCode(code) ? say(code) : id;
}

/** What was found and stops a step, each kind once. */
export function stopWords(say: Text['say'], { stops }: Pick<ItemView, 'stops'>): string {
  return [...new Set(stops.map(({ kind }) => kind))].map((kind) => say(`found.kind.${kind}`)).join(', ');
}

/** How a step stands, in words: a step that is held says after what it comes, one that is stopped says by what. */
export function StandingWords({ view, next }: { readonly view: ItemView; readonly next: string | null }) {
  const { t, say } = useText();
  const standing = standingOf(view, next);
  if (standing === 'held') return t('checklists.held', { holdPoints: view.heldBy.map(({ holdPoint }) => holdPointWords(say, holdPoint)).join(', ') });
  if (standing === 'stopped') return t('checklists.stopped', { kinds: stopWords(say, view) });
  const { tickFrom } = view.item.requirement;
  if (tickFrom !== undefined && view.tooEarly && !isSettled(view)) return t('checklists.beginFrom', { on: tickFrom.slice(0, 10) });
  return t(standing === 'next' ? 'checklists.next' : `checklists.state.${standing}`);
}
