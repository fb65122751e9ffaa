import { useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useEffect, useSyncExternalStore } from 'react';
import { Notice } from '../../components/Notice.tsx';
import { deliver } from '../../lib/deliver.ts';
import { loadOutbox, onOutbox, outboxNow } from '../../lib/outbox.ts';
import { useText } from '../../lib/reader.tsx';

/** A phone that the owner cut off shows nothing of the company. What the office takes from it is sent all the same; the rest stays until its person signs in again. */
export function CutOff() {
  const { t } = useText();
  const queries = useQueryClient();
  const left = useSyncExternalStore(onOutbox, outboxNow).length;
  useEffect(() => {
    void loadOutbox().then(() => {
      const [id, ...others] = new Set(outboxNow().map(({ memberId }) => memberId));
      // The page has forgotten whose session it is: of two people nothing is sent in the name of one.
      return id === undefined || others.length > 0 ? undefined : deliver(queries, { id, name: '' });
    }).catch(() => undefined);
  }, [queries]);
  return (
    <Notice severity="stop" title={t('identity.cutOff.title')} action={<Link className="button button-main button-crew" to="/sign-in">{t('identity.signInAgain')}</Link>}>
      <p>{t('identity.cutOff.why')}</p>
      {left === 0 ? <p>{t('identity.cutOff.none')}</p> : <p role="status">{t('identity.cutOff.left', { n: left })}</p>}
      <p>{t('identity.cutOff.found')}</p>
    </Notice>
  );
}
