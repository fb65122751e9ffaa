import { jobs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { Button } from '../../../components/Button.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';

/** For a site that needs an engineer: no design, a letter. */
export function ReferralLetter({ jobId }: { readonly jobId: string }) {
  const { t, q, say } = useText();
  const { data, error, isPending } = useQuery(read(jobs.referralLetter, { params: { jobId } }));
  if (isPending) return <Loading what={t('jobs.letter')} />;
  if (!data) return <ProblemNotice problem={error} />;
  const { observations, referTo, cautions, writtenAt } = data.data;
  return (
    <article className="stack measure">
      <Heading level={3} aside={q('dateTime', writtenAt)}>{t('jobs.letter')}</Heading>
      <h4>{t('jobs.letter.seen')}</h4>
      <ul className="letter-list">{observations.map((o) => <li key={o.code + o.note}>{say(o.code)}{o.note === '' ? null : <span className="faint letter-note">{o.note}</span>}</li>)}</ul>
      <h4>{t('jobs.letter.call')}</h4>
      <ul className="letter-list">{referTo.map((code) => <li key={code}>{say(code)}</li>)}</ul>
      <h4>{t('jobs.letter.caution')}</h4>
      <ul className="letter-list">{cautions.map((code) => <li key={code}>{say(code)}</li>)}</ul>
      <div className="no-print"><Button onClick={() => print()}>{t('jobs.letter.print')}</Button></div>
    </article>
  );
}
