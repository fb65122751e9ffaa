import { sending, type Job } from '@yardfall/contracts';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useWrite } from '../../../hooks/useWrite.ts';
import { keyOf, read } from '../../../lib/query.ts';
import { textFor, useText } from '../../../lib/reader.tsx';

/** The link by which the customer sends photos and videos of the rain: made, handed over, made anew, ended. */
export function SendingLink({ job }: { readonly job: Job }) {
  const { t, q } = useText();
  const queries = useQueryClient();
  const params = { jobId: job.id };
  const { data } = useQuery(read(sending.linkState, { params }));
  const [link, setLink] = useState<string | null>(null);
  const changed = () => void queries.invalidateQueries({ queryKey: keyOf(sending.linkState) });
  const minting = useWrite(sending.link, { onDone: ({ link: made }) => { setLink(made); changed(); } });
  const ending = useWrite(sending.end, { onDone: () => { setLink(null); changed(); } });
  const open = data?.data.open ?? null;
  return (
    <section className="stack">
      <Heading level={3}>{t('sending.office')}</Heading>
      <p className="measure">{open === null ? t('sending.officeNone') : t('sending.officeOpen', { until: q('dateTime', open.expiresAt), n: open.files })}</p>
      {link === null ? null : <HandOver job={job} link={link} />}
      <div className="row">
        <Button onClick={() => minting.write({ params, body: {} })}>{t(open === null ? 'sending.make' : 'sending.makeAnew')}</Button>
        {open === null ? null : <Button kind="text" onClick={() => ending.write({ params, body: {} })}>{t('sending.end')}</Button>}
      </div>
      <ProblemNotice problem={minting.problem ?? ending.problem} />
    </section>
  );
}

/** The link is told once: to copy, or as a text message in the customer's language. */
function HandOver({ job, link }: { readonly job: Job; readonly link: string }) {
  const { t, units } = useText();
  const { me } = useMe();
  const message = textFor(job.customer.language, units).t('sending.sms', { company: me?.company.name ?? '', link });
  const phone = (job.customer.phones[0] ?? '').replace(/[^+\d]/g, '');
  return (
    <>
      <input className="control" readOnly value={link} aria-label={t('sending.office')} onFocus={(event) => event.target.select()} />
      <div className="row"><a className="button" href={`sms:${phone}?body=${encodeURIComponent(message)}`}>{t('sending.smsSend')}</a></div>
    </>
  );
}
