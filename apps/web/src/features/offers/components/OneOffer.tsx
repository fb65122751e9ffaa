import type { Job, Offer } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { Release } from './Release.tsx';
import { SendOffer } from './SendOffer.tsx';

interface OneOfferProps {
  readonly job: Job;
  readonly offer: Offer;
  readonly send: boolean;
}

/** One offer: where it stands, who accepted it and when, and the fingerprints that tie both to the text. */
export function OneOffer({ job, offer, send }: OneOfferProps) {
  const { t } = useText();
  const zone = { timeZone: job.timeZone };
  const lines = [
    t('offers.price', { price: offer.price, name: offer.designName, revision: offer.revisionNumber }),
    offer.acceptedAt === null ? t('offers.until', { date: offer.validUntil }) : null,
    offer.sentAt === null ? null : t('offers.sentAt', { at: offer.sentAt }, zone),
    offer.withdrawnAt === null ? null : t('offers.withdrawnAt', { at: offer.withdrawnAt }, zone),
  ].filter((line) => line !== null);
  return (
    <article className="stack">
      <Heading level={3} aside={t(`offers.status.${offer.status}`)}>{t('offers.title', { number: offer.number })}</Heading>
      <div>{lines.map((line) => <p key={line}>{line}</p>)}</div>
      {offer.acceptedAt === null ? null : (
        <p><strong>{offer.acceptedName === null ? t('offers.acceptedErased', { at: offer.acceptedAt }, zone) : t('offers.acceptedBy', { name: offer.acceptedName, at: offer.acceptedAt }, zone)}</strong></p>
      )}
      <Fingerprint label={t('offers.fingerprint')} sha256={offer.sha256} />
      {offer.acceptedSha256 === null ? null : <Fingerprint label={t('offers.acceptedFingerprint')} sha256={offer.acceptedSha256} />}
      {send ? <SendOffer job={job} offer={offer} /> : null}
      {offer.status === 'accepted' ? <Release job={job} offer={offer} /> : null}
    </article>
  );
}

function Fingerprint({ label, sha256 }: { readonly label: string; readonly sha256: string }) {
  return <p className="faint">{label}<br /><span className="figure offer-hash">{sha256}</span></p>;
}
