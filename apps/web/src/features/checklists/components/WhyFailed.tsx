import { Notice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { factsOf } from '../model/evidence.ts';
import { missingSentence } from '../model/sentences.ts';
import type { ItemView } from '../model/view.ts';

/** What is wrong with a step that failed, where it is put right: in the words of whoever said so, and by its figures. */
export function WhyFailed({ view }: { readonly view: ItemView }) {
  const { t, say } = useText();
  if (view.state !== 'failed') return null;
  const said = factsOf(view, 'failed').at(-1)?.reason;
  const off = view.missing.filter((mark) => mark.startsWith('outside:'));
  return (
    <Notice severity="stop" title={t('checklists.state.failed')}>
      {said === undefined ? null : <p>{said}</p>}
      {off.map((mark) => <p key={mark}>{missingSentence(say, mark, view.item.requirement)}</p>)}
    </Notice>
  );
}
