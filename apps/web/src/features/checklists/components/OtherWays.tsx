import { maySayNot, officeSaysNot } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextArea } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { useWaive } from '../api/checklists.ts';
import { isSettled } from '../model/view.ts';
import type { EvidenceProps } from './Evidence.tsx';

type Way = 'notApplicable' | 'failed' | 'corrected' | 'waived';
const shortest: Readonly<Record<Way, number>> = { notApplicable: 10, failed: 3, corrected: 3, waived: 10 };

/** What else can be said of an item, each with its reason: it does not apply, it failed, it was put right, the owner waives it. */
export function OtherWays({ list, view, record, held }: EvidenceProps & { readonly held: boolean }) {
  const { t } = useText();
  const { me, may } = useMe();
  const [way, setWay] = useState<Way | null>(null);
  const { write, busy, problem } = useWaive(() => setWay(null));
  const { holdPoint, key } = view.item;
  const failed = view.state === 'failed' || view.state === 'disputed';
  const ways: Way[] = [
    ...(failed && !held ? ['corrected' as const] : []),
    ...(may('checklists.record') && !failed && !held ? ['failed' as const] : []),
    ...(may('checklists.record') && !held && !isSettled(view) && maySayNot(view.item.requirement, holdPoint, me?.roles ?? []) ? ['notApplicable' as const] : []),
    ...(may('checklists.waive') && holdPoint !== null && !isSettled(view) ? ['waived' as const] : []),
  ];
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const reason = fieldsOf(event.currentTarget)('reason');
    if (way === 'waived') write({ params: { jobId: list.jobId, itemKey: key }, body: { reason } });
    else if (way === 'corrected') record.record({ kind: way, note: reason }, () => setWay(null));
    else if (way !== null) record.record({ kind: way, reason }, () => setWay(null));
  };
  const askOffice = !held && holdPoint === null && !isSettled(view) && officeSaysNot(view.item.requirement) && !ways.includes('notApplicable');
  if (way === null) {
    return (
      <>
        <div className="row other-ways">{ways.map((one) => <Button key={one} size="crew" kind={one === 'corrected' ? 'main' : 'plain'} onClick={() => setWay(one)}>{t(`checklists.way.${one}`)}</Button>)}</div>
        {askOffice ? <p className="faint">{t('checklists.officeSaysNot')}</p> : null}
      </>
    );
  }
  return (
    <form className="stack evidence" onSubmit={submit}>
      <TextArea key={way} label={t(`checklists.way.${way}.reason`)} name="reason" required minLength={shortest[way]} maxLength={500} rows={3} />
      <ProblemNotice problem={problem} />
      <div className="row">
        <Button type="submit" size="crew" kind="main" disabled={record.busy} busy={busy}>{t(`checklists.way.${way}`)}</Button>
        <Button kind="text" size="crew" onClick={() => setWay(null)}>{t('ui.cancel')}</Button>
      </div>
    </form>
  );
}
