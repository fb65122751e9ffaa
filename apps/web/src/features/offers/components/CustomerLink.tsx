import type { Job } from '@yardfall/contracts';
import { useId, useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { textFor, useText } from '../../../lib/reader.tsx';
import { smsLink, wholeLink } from '../model/link.ts';

interface CustomerLinkProps {
  readonly job: Job;
  readonly number: number;
  readonly link: string;
}

/** The link to hand over, to copy or as a text message with its words ready in the customer's language. */
export function CustomerLink({ job, number, link }: CustomerLinkProps) {
  const { t, units } = useText();
  const { me } = useMe();
  const id = useId();
  const [copied, setCopied] = useState<'yes' | 'no' | null>(null);
  const whole = wholeLink(link, location.origin);
  const message = textFor(job.customer.language, units).t('offers.smsText', { number, company: me?.company.name ?? '', link: whole });
  const copy = () => {
    // Absent where the page is not served over a secure connection.
    const clipboard: Clipboard | undefined = navigator.clipboard;
    if (clipboard === undefined) setCopied('no');
    else clipboard.writeText(whole).then(() => setCopied('yes'), () => setCopied('no'));
  };
  return (
    <Notice title={t('offers.link')}>
      <p>{t('offers.linkOnce')}</p>
      <input id={id} className="control offer-link" readOnly value={whole} aria-label={t('offers.link')} onFocus={(event) => event.target.select()} />
      <div className="row">
        <Button kind="main" onClick={copy}>{t('offers.copy')}</Button>
        <a className="button" href={smsLink(job.customer.phones[0] ?? null, message)}>{t('offers.sms')}</a>
        <span role="status">{copied === null ? '' : t(copied === 'yes' ? 'offers.copied' : 'offers.copyFailed')}</span>
      </div>
    </Notice>
  );
}
