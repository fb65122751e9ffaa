import { type Job, type OutletQuestion, outletQuestions, type Permit } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useMinute } from '../../../hooks/useMinute.ts';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { useText } from '../../../lib/reader.tsx';
import { wallClockIn } from '../../../lib/zoneTime.ts';
import { usePermits } from '../api/permits.ts';
import { outletKey, permitKey, permitsHere } from '../model/here.ts';
import { openCount } from '../model/open.ts';
import { OutletAnswer, PermitAnswerForm } from './Answers.tsx';
import { NotNeeded } from './NotNeeded.tsx';
import { Stands } from './Stands.tsx';
import './permits.css';

/** What the place asks for before anything is dug, and where each stands; whatever is open holds the release. */
export function PermitsSection({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { data, dataUpdatedAt, error, isPending, refetch } = usePermits(job.id);
  const entries = useOutbox();
  const now = useMinute(dataUpdatedAt);
  if (isPending) return <Loading what={t('permits.loading')} />;
  if (!data) return <ProblemNotice problem={error} action={<Button onClick={() => void refetch()}>{t('ui.tryAgain')}</Button>} />;
  const today = wallClockIn(job.timeZone, new Date(now)).slice(0, 10);
  const here = permitsHere(data.data, entries, job.id, today);
  const count = openCount(here.permits);
  return (
    <div className="stack">
      <p className="measure">{t('permits.lead')}</p>
      {count === 0 ? <p className="permits-clear">{t('permits.allClear')}</p> : <Notice severity="caution" title={t('permits.open', { count })} />}
      <Outlets job={job} {...here} today={today} />
      <Kinds job={job} {...here} today={today} />
    </div>
  );
}

interface PartProps extends ReturnType<typeof permitsHere> {
  readonly job: Job;
  readonly today: string;
}

function Kinds({ job, permits: { permits }, kept, today }: PartProps) {
  const { t } = useText();
  const { may } = useMe();
  const [asked, setAsked] = useState<Permit | null>(null);
  const [several, setSeveral] = useState(false);
  const edit = may('permits.edit');
  const unknown = permits.filter(({ gap }) => gap === 'unknown').map(({ kind }) => kind);
  return (
    <>
      <Heading level={3}>{t('permits.title')}</Heading>
      {edit && unknown.length > 1 ? <div><Button size="crew" onClick={() => setSeveral(true)}>{t('permits.several')}</Button></div> : null}
      <Table stacks caption={t('permits.title')} captionUnseen
        columns={[{ key: 'permit', head: t('permits.permit') }, { key: 'stands', head: t('permits.stands') }, ...(edit ? [{ key: 'act', head: <span className="unseen">{t('permits.answer')}</span> }] : [])]}
        rows={permits.map((permit) => {
          const name = { permit: `permits.kind.${permit.kind}` };
          const isOpen = permit.gap !== null;
          return {
            key: permit.kind,
            cells: {
              permit: <span><strong>{t(`permits.kind.${permit.kind}`)}</strong><span className="faint permit-line">{t(`permits.when.${permit.kind}`)} {permit.usual ? t('permits.usual') : null}</span></span>,
              stands: <Stands job={job} answer={permit.answer} gap={permit.gap} kept={kept.get(permitKey(permit.kind)) ?? []} today={today} name={name.permit} />,
              act: <div className="permit-act"><Button size="crew" kind={isOpen ? 'plain' : 'text'} aria-label={t(isOpen ? 'permits.answerOf' : 'permits.changeOf', name)} onClick={() => setAsked(permit)}>{t(isOpen ? 'permits.answer' : 'permits.change')}</Button></div>,
            },
          };
        })} />
      <Dialog open={asked !== null} title={asked === null ? '' : t(`permits.kind.${asked.kind}`)} onClose={() => setAsked(null)}>
        {asked === null ? null : <PermitAnswerForm job={job} kind={asked.kind} onDone={() => setAsked(null)} />}
      </Dialog>
      <Dialog open={several} title={t('permits.several')} onClose={() => setSeveral(false)}>
        <NotNeeded job={job} kinds={unknown} onDone={() => setSeveral(false)} />
      </Dialog>
    </>
  );
}

interface Asked {
  readonly outlet: string;
  readonly question: OutletQuestion['question'];
}

/** Only what the issued design left open, or what was answered since. */
function Outlets({ job, permits: { outlets, revisionId }, kept, today }: PartProps) {
  const { t } = useText();
  const { may } = useMe();
  const [asked, setAsked] = useState<Asked | null>(null);
  if (revisionId === null) return <p className="faint">{t('permits.designFirst')}</p>;
  const edit = may('permits.edit');
  return (
    <>
      {outlets.map(({ outlet, name, questions }) => {
        const shown = questions.filter(({ gap, answer }) => gap !== null || answer !== null);
        if (shown.length === 0) return null;
        return (
          <section className="stack" key={outlet}>
            <Heading level={3}>{t('permits.outlet', { name })}</Heading>
            <p className="faint">{t('permits.outletWhy')}</p>
            <Table stacks caption={t('permits.outlet', { name })} captionUnseen
              columns={[{ key: 'question', head: t('permits.question') }, { key: 'stands', head: t('permits.stands') }, ...(edit ? [{ key: 'act', head: <span className="unseen">{t('permits.answer')}</span> }] : [])]}
              rows={shown.map(({ question, gap, answer }) => {
                const asks = `designs.question.${outletQuestions[question]}`;
                return {
                  key: question,
                  cells: {
                    question: t('permits.questionIs', { question, asks }),
                    stands: <Stands job={job} answer={answer} gap={gap} kept={kept.get(outletKey(outlet, question)) ?? []} today={today} name={asks} />,
                    act: <div className="permit-act"><Button size="crew" kind={gap === null ? 'text' : 'plain'} aria-label={t(gap === null ? 'permits.changeOf' : 'permits.answerOf', { permit: asks })} onClick={() => setAsked({ outlet, question })}>{t(gap === null ? 'permits.change' : 'permits.answer')}</Button></div>,
                  },
                };
              })} />
          </section>
        );
      })}
      <Dialog open={asked !== null} title={asked === null ? '' : t('permits.questionIs', { question: asked.question, asks: `designs.question.${outletQuestions[asked.question]}` })} onClose={() => setAsked(null)}>
        {asked === null ? null : <OutletAnswer job={job} revisionId={revisionId} {...asked} onDone={() => setAsked(null)} />}
      </Dialog>
    </>
  );
}
