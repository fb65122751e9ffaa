import { company as api, type Company, groupText, itemTemplates, type WantedChecklist } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useWrite } from '../../../hooks/useWrite.ts';
import { useText, type Text } from '../../../lib/reader.tsx';
import { builtInName, changeWords } from '../model/stepWords.ts';
import { ChangeStep } from './ChangeStep.tsx';
import { OwnStepForm } from './OwnStepForm.tsx';

/** How the company does the steps of the work: read by everybody, set by an owner. */
export function Steps({ company, etag }: { readonly company: Company; readonly etag: string | null }) {
  const text = useText();
  const { t } = text;
  const { may } = useMe();
  const { write, busy, problem } = useWrite(api.update, { refreshes: [api.read] });
  const { changes, own } = company.settings.checklist;
  const store = (checklist: WantedChecklist) => write({
    body: { checklist: { own: [...checklist.own], changes: checklist.changes.map(({ item, leftOut, what, adds, photos, limits = null, cure = null, figures = null, why }) => ({ item, leftOut, what, adds, photos, limits, cure, figures, why })) } }, ...(etag === null ? {} : { ifMatch: etag }),
  });
  const undo = (label: string, rest: WantedChecklist) => (may('company.manage') ? <Button kind="text" busy={busy} onClick={() => store(rest)}>{label}</Button> : null);
  const rows = [
    ...changes.map((change) => ({
      key: change.item,
      cells: {
        step: builtInName(change.item, text), how: changeWords(change, text), who: t('limits.page.stamp', { by: change.by, at: change.at }), why: change.why,
        undo: undo(t('steps.back'), { own, changes: changes.filter(({ item }) => item !== change.item) }),
      },
    })),
    ...own.map((step) => ({ key: step.id, cells: { step: `${step.what} (${stageName(step.id, text)})`, how: t('steps.own'), who: '', why: step.whyCrew, undo: undo(t('steps.remove'), { changes, own: own.filter(({ id }) => id !== step.id) }) } })),
  ];
  return (
    <section className="stack" aria-labelledby="steps">
      <Heading id="steps">{t('steps.title')}</Heading>
      <p className="measure">{t('steps.lead')}</p>
      {rows.length === 0 ? <p>{t('steps.none')}</p> : (
        <Table caption={t('steps.title')} captionUnseen stacks="labelled" rows={rows} columns={[
          { key: 'step', head: t('steps.step') }, { key: 'how', head: t('steps.how') }, { key: 'who', head: t('steps.who') }, { key: 'why', head: t('steps.why') }, { key: 'undo', head: '' },
        ]} />
      )}
      {may('company.manage') ? (
        <>
          <ChangeStep key={`change ${String(etag)}`} busy={busy} onSet={(change) => store({ own, changes: [...changes.filter(({ item }) => item !== change.item), change] })} />
          <OwnStepForm key={`own ${String(etag)}`} busy={busy} taken={own.map(({ id }) => id)} onAdd={(step) => store({ changes, own: [...own, step] })} />
        </>
      ) : null}
      <ProblemNotice problem={problem} />
    </section>
  );
}

function stageName(id: string, { say }: Text): string {
  const group = itemTemplates.find((template) => template.id.startsWith(id.charAt(0)))?.group;
  return group === undefined ? '' : say(groupText(group, itemTemplates.map((template) => template.id)));
}
