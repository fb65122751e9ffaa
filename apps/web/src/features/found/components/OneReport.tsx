import { isHit, type FoundReport } from '@yardfall/contracts';
import { type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextArea } from '../../../components/Field.tsx';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { useBuildParts } from '../../../hooks/useBuildParts.ts';
import { useMe } from '../../../hooks/useMe.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { ApiProblem } from '../../../lib/problem.ts';
import { useText } from '../../../lib/reader.tsx';
import { useAnswerFound, useDraftForFound } from '../api/found.ts';

/** One report with its answer, or the form to answer it, which lets the work go on. */
export function OneReport({ report, timeZone }: { readonly report: FoundReport; readonly timeZone: string }) {
  const { t, q } = useText();
  const { may } = useMe();
  const part = useBuildParts(report.jobId).find(({ id }) => id === report.part)?.name ?? report.part;
  const open = report.status === 'open';
  const kind = t(`found.kind.${report.kind}`);
  return (
    <article className={`stack found-report ${open ? 'found-open' : ''}`}>
      <p className="found-head">
        <FindingMark severity={open ? 'stop' : 'note'} wordUnseen />
        <strong>{part === null ? kind : t('found.atPart', { kind, part })}</strong>
        {report.measure === null ? null : <span className="figure">{q('tape', report.measure)}</span>}
      </p>
      {report.note === kind || report.note === '' ? null : <p className="found-note">{report.note}</p>}
      {isHit(report.hit) ? <p><strong>{t('found.hit.noDigging')}</strong></p> : null}
      {report.photoIds.length > 0 ? <div className="photo-strip">{report.photoIds.map((id) => <Photo key={id} jobId={report.jobId} photoId={id} alt={kind} />)}</div> : null}
      <p className="faint">{t('found.reported', { by: report.reportedBy, at: report.stoppedAt ?? report.reportedAt }, { timeZone })}</p>
      {report.answer === null ? null : <p>{report.answer}</p>}
      {report.draft === null ? null : <p><a href="#design">{t(open || report.answer !== null ? 'found.draft' : 'found.answeredByRevision', { name: report.draft.designName, number: report.draft.number })}</a></p>}
      {report.answeredAt === null ? <p>{t('found.open')}</p> : <p className="faint">{t('found.answered', { by: report.answeredBy ?? '', at: report.answeredAt }, { timeZone })}</p>}
      {open && report.draft === null && may('designs.edit') ? <OpenDraft report={report} /> : null}
      {open && may('findings.answer') ? <Answer report={report} /> : null}
    </article>
  );
}

const isDraftOpen = (problem: unknown): boolean => problem instanceof ApiProblem && problem.code === 'design.draftOpen';

function OpenDraft({ report }: { readonly report: FoundReport }) {
  const { t } = useText();
  const { write, busy, problem } = useDraftForFound(() => location.assign('#design'));
  return (
    <div className="stack">
      <ProblemNotice problem={problem} action={isDraftOpen(problem) ? <a className="button button-plain" href="#design">{t('found.toDraft')}</a> : undefined} />
      <div><Button busy={busy} onClick={() => write({ params: { jobId: report.jobId, reportId: report.id }, body: {} })}>{t('found.openDraft')}</Button></div>
    </div>
  );
}

function Answer({ report }: { readonly report: FoundReport }) {
  const { t } = useText();
  const { write, busy, problem } = useAnswerFound(() => undefined);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    write({ params: { jobId: report.jobId, reportId: report.id }, body: { answer: fieldsOf(event.currentTarget)('answer') } });
  };
  return (
    <form className="stack measure" onSubmit={submit}>
      <TextArea label={t('found.yourAnswer')} hint={t('found.yourAnswerHint')} name="answer" required maxLength={2000} rows={3} />
      <ProblemNotice problem={problem} />
      <div><Button type="submit" kind="main" busy={busy}>{t('found.answer')}</Button></div>
    </form>
  );
}
