import type { Job, Offer } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useSendOffer, useWithdrawOffer } from '../api/offers.ts';
import { CustomerLink } from './CustomerLink.tsx';

/** Sending shows the customer's link once; an offer that is not accepted can be taken back. */
export function SendOffer({ job, offer }: { readonly job: Job; readonly offer: Offer }) {
  const { t } = useText();
  const [asked, setAsked] = useState(false);
  const sending = useSendOffer();
  const withdrawing = useWithdrawOffer(() => { setAsked(false); sending.forget(); });
  const params = { jobId: job.id, offerId: offer.id };
  const mayBeSent = offer.status === 'draft' || offer.status === 'sent';
  const mayBeWithdrawn = mayBeSent || offer.status === 'expired';
  return (
    <div className="stack">
      {sending.answer ? <CustomerLink job={job} number={offer.number} link={sending.answer.link} /> : null}
      <ProblemNotice problem={sending.problem} />
      {mayBeWithdrawn ? (
        <div className="row">
          {mayBeSent ? (
            <Button kind={offer.status === 'draft' ? 'main' : 'plain'} busy={sending.busy} onClick={() => sending.write({ params, body: {} })}>
              {t(offer.status === 'draft' ? 'offers.send' : 'offers.sendAgain')}
            </Button>
          ) : null}
          <Button kind="text" onClick={() => setAsked(true)}>{t('offers.withdraw')}</Button>
        </div>
      ) : null}
      <Dialog open={asked} title={t('offers.withdraw')} onClose={() => setAsked(false)}>
        <p>{t('offers.withdrawSure')}</p>
        <ProblemNotice problem={withdrawing.problem} />
        <div><Button kind="danger" busy={withdrawing.busy} onClick={() => withdrawing.write({ params, body: {} })}>{t('offers.withdraw')}</Button></div>
      </Dialog>
    </div>
  );
}
