import { maySayNot, officeSaysNot } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Choices } from '../../../components/Choices.tsx';
import { TextArea } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { useWaive } from '../api/checklists.ts';
import { readyReasons, reasonOf, shortest, type Way } from '../model/otherWays.ts';
import { isSettled } from '../model/view.ts';
import type { EvidenceProps } from './Evidence.tsx';

/** What else can be said of an item, each with its reason: it does not apply, it failed, it was put right, the owner waives it. Of work that is held only the owner says something. */
export function OtherWays({ list, view, record, held }: EvidenceProps & { readonly held: boolean }) {
  const { t } = useText();
  const { me, may } = useMe();
  const [way, setWay] = useState<Way | null>(null);
  const failed = view.state === 'failed' || view.state === 'disputed';
  const records = may('checklists.record') && !held;
  const ways: Way[] = [
    ...(failed && records ? ['corrected' as const] : []),
    ...(records && !failed ? ['failed' as const] : []),
    ...(records && !isSettled(view) && maySayNot(view.item.requirement, view.item.holdPoint, me?.roles ?? []) ? ['notApplicable' as const] : []),
    ...(may('checklists.waive') && view.item.holdPoint !== null && view.item.requirement.daily === undefined && !isSettled(view) ? ['waived' as const] : []),
  ];
  if (way !== null) return <WithReason key={way} list={list} view={view} record={record} way={way} onDone={() => setWay(null)} />;
  const asksOffice = !held && view.item.holdPoint === null && !isSettled(view) && officeSaysNot(view.item.requirement) && !ways.includes('notApplicable');
  if (ways.length === 0 && !asksOffice) return null;
  return (
    <>
      <div className="row other-ways">{ways.map((one) => <Button key={one} size="crew" kind={one === 'corrected' ? 'main' : 'plain'} onClick={() => setWay(one)}>{t(`checklists.way.${one}`)}</Button>)}</div>
      {asksOffice ? <p className="faint">{t('checklists.officeSaysNot')}</p> : null}
    </>
  );
}

/** A reason that is ready to be chosen, words of one's own, or both. */
function WithReason({ list, view, record, way, onDone }: EvidenceProps & { readonly way: Way; readonly onDone: () => void }) {
  const { t, say } = useText();
  const [chosen, setChosen] = useState<string | null>(null);
  const { write, busy, problem } = useWaive(onDone);
  const ready = readyReasons[way].map((name) => ({ value: name, label: say(`checklists.ready.${way}.${name}`) }));
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const reason = reasonOf(ready.find(({ value }) => value === chosen)?.label ?? '', fieldsOf(event.currentTarget)('reason'));
    if (way === 'waived') write({ params: { jobId: list.jobId, itemKey: view.item.key }, body: { reason } });
    else record.record([way === 'corrected' ? { kind: way, note: reason } : { kind: way, reason }], onDone);
  };
  return (
    <form className="stack evidence" onSubmit={submit}>
      {ready.length === 0 ? null : <Choices look="crew" label={t(`checklists.way.${way}.reason`)} choices={ready} value={chosen} onChange={setChosen} />}
      <TextArea label={ready.length === 0 ? t(`checklists.way.${way}.reason`) : t('checklists.ready.words')} name="reason" required={chosen === null} optional={chosen !== null} minLength={chosen === null ? shortest[way] : 0} maxLength={400} rows={2} />
      <ProblemNotice problem={problem} />
      <div className="row">
        <Button type="submit" size="crew" kind="main" disabled={record.busy} busy={busy}>{t(`checklists.way.${way}`)}</Button>
        <Button kind="text" size="crew" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </form>
  );
}
