import { itemText } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import type { Typing } from '../api/useStepDraft.ts';
import { readiness } from '../model/draft.ts';
import { keepOffOf } from '../model/evidence.ts';
import { missingSentence } from '../model/sentences.ts';
import { isSettled, type ItemView } from '../model/view.ts';
import type { EvidenceProps } from './Evidence.tsx';

/** What the step still needs, and the one press that records what stands there. */
export function Finish({ list, view, record, typing }: EvidenceProps & { readonly typing: Typing }) {
  const { t } = useText();
  const { me } = useMe();
  const [pressed, setPressed] = useState(false);
  const { bodies, needs, finishes, isOff, waitsForOffice } = readiness(typing.draft, view, list, me?.roles ?? [], me === null ? {} : { by: me.name, memberId: me.id });
  if (bodies.length === 0 && isSettled(view)) return view.state === 'proven' ? <IsDone view={view} /> : null;
  const { tickFrom } = view.item.requirement;
  if (tickFrom !== undefined && view.tooEarly) return <Notice severity="stop" title={t('checklists.beginFrom', { on: tickFrom.slice(0, 10) })}><p>{t('checklists.beginFrom.why')}</p></Notice>;
  const press = () => {
    setPressed(true); // told at once; what the phone keeps follows
    record.record(bodies, () => { typing.clear(); setPressed(false); });
  };
  const busy = record.busy || (pressed && record.problem === null);
  return (
    <div className="stack evidence finish">
      <Needs view={view} needs={needs} />
      {isOff && bodies.length > 0 ? <p className="field-error">{t('checklists.keepOff.why')}</p> : null}
      {waitsForOffice ? <p>{t('checklists.officeTicks')}</p> : null}
      {bodies.length === 0 && (needs.length === 0 || waitsForOffice) ? null : (
        <Button kind={finishes ? 'main' : 'plain'} size="crew" wide busy={busy} disabled={busy || bodies.length === 0} onClick={press}>
          {pressed && busy ? t('ui.saved.saving') : t(finishes || bodies.length === 0 ? 'checklists.done' : isOff ? 'checklists.keepOff' : 'checklists.keepPart')}
        </Button>
      )}
    </div>
  );
}

/** It is on record; of what was glued, and of new concrete, from when on it bears what. */
function IsDone({ view }: Pick<EvidenceProps, 'view'>) {
  const { t } = useText();
  const off = keepOffOf(view);
  return (
    <>
      <p className="verdict verdict-good" role="status"><span aria-hidden="true">{'✓'}</span>{t('checklists.isDone')}</p>
      {view.readyAt === null ? null : <p className="notice-title">{t('checklists.pressureFrom', { at: new Date(view.readyAt).toISOString() })}</p>}
      {off === null ? null : <p className="notice-title">{t('checklists.keepOff.until', off)}</p>}
    </>
  );
}

function Needs({ view, needs }: { readonly view: ItemView; readonly needs: readonly string[] }) {
  const { t, say } = useText();
  if (needs.length === 0) return null;
  const { requirement } = view.item;
  const sentence = (mark: string) => {
    const [kind, count] = mark.split(':');
    return kind === 'photo' ? t('checklists.needs.photo', { count: Number(count), what: say(itemText(requirement, 'photo'), requirement.params) }) : missingSentence(say, mark, requirement);
  };
  return (
    <div className="needs" role="status">
      <p className="notice-title">{t('checklists.needs')}</p>
      <ul>{needs.map((mark) => <li key={mark}>{sentence(mark)}</li>)}</ul>
    </div>
  );
}
