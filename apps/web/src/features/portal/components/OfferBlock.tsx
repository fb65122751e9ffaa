import type { Portal } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useOfferText, type ReadOffer } from '../api/portal.ts';
import { AcceptOffer } from './AcceptOffer.tsx';

type Offer = NonNullable<Portal['offer']>;

/** Price, the exact text and its fingerprint, and the place to say yes. */
export function OfferBlock({ offer, pumped }: { readonly offer: Offer; readonly pumped: boolean }) {
  const { t, language } = useText();
  const { data, error, isPending } = useOfferText(offer.id);
  const open = offer.status === 'sent';
  return (
    <section className="stack" aria-labelledby="offer">
      <Heading id="offer">{t('portal.offer')}</Heading>
      <p className="drain-price">{t('portal.offer.price', { price: offer.price })}</p>
      {open ? <p>{t('portal.offer.until', { date: offer.validUntil })}</p> : null}
      {offer.status === 'withdrawn' ? <Notice><p>{t('portal.offer.withdrawn')}</p></Notice> : null}
      {offer.status === 'expired' ? <Notice><p>{t('portal.offer.expired')}</p></Notice> : null}
      <Accepted offer={offer} />
      <details className="drain-fold" open={open}>
        <summary>{t('portal.offer.read')}</summary>
        {isPending ? <Loading what={t('portal.offer.loading')} /> : null}
        <ProblemNotice problem={error} />
        {offer.language === language ? null : <p className="faint">{t('portal.offer.language', { language: t(`portal.offer.in.${offer.language}`) })}</p>}
        {data ? <OfferText read={data} offer={offer} /> : null}
        {data && pumped ? <p className="faint">{t('portal.handover.words')}</p> : null}
      </details>
      {open && data && (data.sha256 === null || data.sha256 === offer.sha256) ? <AcceptOffer offerId={offer.id} sha256={offer.sha256} /> : null}
    </section>
  );
}

function OfferText({ read, offer }: { readonly read: ReadOffer; readonly offer: Offer }) {
  const { t } = useText();
  return (
    <div className="stack">
      <div className="drain-offer" lang={offer.language}>{read.text.trimEnd().split('\n').map((line, at) => <p key={at}>{line}</p>)}</div>
      <p className="faint">{t('portal.offer.hash')}<br /><span className="figure drain-hash">{offer.sha256}</span></p>
      {read.sha256 === null ? null : read.sha256 === offer.sha256
        ? <p className="faint">{t('portal.offer.hashGood')}</p>
        : <Notice severity="stop"><p>{t('portal.offer.hashBad')}</p></Notice>}
    </div>
  );
}

function Accepted({ offer: { acceptedAt, acceptedName, acceptedSha256 } }: { readonly offer: Offer }) {
  const { t } = useText();
  if (acceptedAt === null) return null;
  return (
    <div role="status">
      <p><strong>{acceptedName === null ? t('portal.offer.acceptedErased', { at: acceptedAt }) : t('portal.offer.accepted', { name: acceptedName, at: acceptedAt })}</strong></p>
      {acceptedSha256 === null ? null : <p className="faint">{t('portal.offer.acceptedHash')}<br /><span className="figure drain-hash">{acceptedSha256}</span></p>}
    </div>
  );
}
