import type { Job } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { ComplaintFigures } from './ComplaintFigures.tsx';
import { CorrectJob } from './CorrectJob.tsx';
import { History } from './History.tsx';
import { MoveStage } from './MoveStage.tsx';
import { People } from './People.tsx';
import { ReferralLetter } from './ReferralLetter.tsx';
import './SiteSection.css';

export function SiteSection({ job, etag }: { readonly job: Job; readonly etag: string | null }) {
  const { t } = useText();
  const { may } = useMe();
  const [open, setOpen] = useState(false);
  const { property, customer } = job;
  return (
    <div className="stack-wide">
      <div className="site-parts">
        <div className="stack">
          {job.urgency === 'normal' ? null : <Notice severity="caution"><p>{t(`jobs.urgency.${job.urgency}`)}</p></Notice>}
          <blockquote className="site-words">{job.complaint.words}</blockquote>
          <ComplaintFigures complaint={job.complaint} />
        </div>
        <div className="stack">
          <Heading level={3}>{t('jobs.customer')}</Heading>
          <p>{customer.name}</p>
          {customer.phones.map((phone) => <p key={phone}><a href={`tel:${phone.replace(/[^+\d]/g, '')}`}>{phone}</a></p>)}
          {customer.email ? <p><a href={`mailto:${customer.email}`}>{customer.email}</a></p> : null}
          <Heading level={3}>{t('jobs.property')}</Heading>
          <p>{property.address}</p>
          {property.gateCode ? <p>{t('jobs.property.gateCodeIs', { code: property.gateCode })}</p> : null}
          {property.notes ? <p>{property.notes}</p> : null}
          {may('jobs.edit') ? <div><Button onClick={() => setOpen(true)}>{t('jobs.correct')}</Button></div> : null}
        </div>
      </div>
      {job.stage === 'referred' ? <ReferralLetter jobId={job.id} /> : null}
      {may('jobs.assign') ? <People job={job} /> : null}
      <History job={job} />
      {may('jobs.edit') ? <MoveStage job={job} /> : null}
      <Dialog open={open} title={t('jobs.correct')} onClose={() => setOpen(false)}>
        <CorrectJob job={job} etag={etag} onDone={() => setOpen(false)} />
      </Dialog>
    </div>
  );
}
