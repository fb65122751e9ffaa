import type { Job } from '@yardfall/contracts';
import { Empty } from '../../../components/Empty.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { useOffers } from '../api/offers.ts';
import { MakeOffer } from './MakeOffer.tsx';
import { OneOffer } from './OneOffer.tsx';
import './offers.css';

/** The offers of a job, the newest first, and the release that follows a yes. */
export function OfferSection({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { may } = useMe();
  const { data, error, isPending } = useOffers(job.id);
  if (isPending) return <Loading what={t('offers.loading')} />;
  const items = data?.data.items ?? [];
  const send = may('offers.send');
  const make = send ? <MakeOffer job={job} first={items.length === 0} /> : undefined;
  return (
    <div className="stack">
      <ProblemNotice problem={error} />
      {items.map((offer) => <OneOffer key={offer.id} job={job} offer={offer} send={send} />)}
      {items.length === 0 ? <Empty what={t('offers.none')} why={t('offers.noneWhy')} step={make} /> : null}
      {items.length > 0 && send ? <details className="offer-fold"><summary>{t('offers.another')}</summary>{make}</details> : null}
    </div>
  );
}
