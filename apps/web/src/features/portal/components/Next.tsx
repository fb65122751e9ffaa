import type { Portal } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { CallUs } from './CallUs.tsx';

/** What happens next, and what we need from the customer. */
export function Next({ page }: { readonly page: Portal }) {
  const { t, say } = useText();
  const asks = page.offer?.status === 'sent' ? page.offer : null;
  return (
    <section className="stack" aria-labelledby="next">
      <Heading id="next">{t('portal.next')}</Heading>
      <p className="drain-next">{say(page.next.code, page.next.params)}</p>
      {page.times.map(({ code, params }) => <p key={code}>{say(code, params)}</p>)}
      <div>
        <h3>{t('portal.need')}</h3>
        <p>{asks ? t('portal.need.answer', { date: asks.validUntil }) : t(page.handover === null ? 'portal.need.nothing' : 'portal.need.care')}</p>
      </div>
      <CallUs phone={page.company.phone} />
      {asks ? <div className="row"><a className="button" href="#offer">{t('portal.toOffer')}</a></div> : null}
    </section>
  );
}
