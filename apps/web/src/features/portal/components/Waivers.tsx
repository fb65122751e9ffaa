import { itemTemplate, type Portal } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';

/** What the owner let pass, with the reason; nothing of it is hidden from the customer. */
export function Waivers({ waivers }: { readonly waivers: Portal['waivers'] }) {
  const { t, say } = useText();
  const told = (item: string) => {
    const [id = ''] = item.split(':');
    const params = itemTemplate(id)?.params ?? {};
    return { what: say(`checklists.${id}.what`, params), why: say(`checklists.${id}.whyHome`, params) };
  };
  return (
    <section className="stack" aria-labelledby="waivers">
      <Heading id="waivers">{t('portal.waivers')}</Heading>
      <p>{t('portal.waivers.lead')}</p>
      <ul className="drain-list">
        {waivers.map(({ item, reason, by, at }) => {
          const { what, why } = told(item);
          return <li key={item + at}><p><strong>{what}</strong></p><p>{why}</p><p>{reason}</p><p className="faint">{t('portal.waiver.by', { by, at })}</p></li>;
        })}
      </ul>
    </section>
  );
}
