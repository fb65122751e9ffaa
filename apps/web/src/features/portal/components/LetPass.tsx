import { itemTemplate, type Portal } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';

/** What the owner let pass, with the reason; nothing of it is hidden from the customer. */
export function LetPass({ waivers, weaker }: Pick<Portal, 'waivers' | 'weaker'>) {
  const { t } = useText();
  return (
    <>
      {waivers.length === 0 ? null : (
        <section className="stack" aria-labelledby="waivers">
          <Heading id="waivers">{t('portal.waivers')}</Heading>
          <p>{t('portal.waivers.lead')}</p>
          <ul className="drain-list">
            {waivers.map(({ item, reason, by, at }) => <li key={item + at}><Step item={item} /><p>{reason}</p><p className="faint">{t('portal.waiver.by', { by, at })}</p></li>)}
          </ul>
        </section>
      )}
      {weaker.length === 0 ? null : (
        <section className="stack" aria-labelledby="weaker">
          <Heading id="weaker">{t('portal.weaker')}</Heading>
          <p>{t('portal.weaker.lead')}</p>
          <ul className="drain-list">
            {weaker.map(({ item, photos, builtIn, limits, reason, by }) => (
              <li key={item}><Step item={item} />{photos < builtIn ? <p>{t(photos === 0 ? 'portal.weaker.none' : 'portal.weaker.photos', { photos, builtIn })}</p> : null}{limits !== null && limits > 1 ? <p>{t('portal.weaker.limits', { limits })}</p> : null}<p>{reason}</p><p className="faint">{by}</p></li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

/** A step in the customer's words, and why it is done. */
function Step({ item }: { readonly item: string }) {
  const { say } = useText();
  const [id = ''] = item.split(':');
  const params = itemTemplate(id)?.params ?? {};
  return <><p><strong>{say(`checklists.${id}.what`, params)}</strong></p><p>{say(`checklists.${id}.whyHome`, params)}</p></>;
}
