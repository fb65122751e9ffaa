import { useText } from '../lib/reader.tsx';

/** Says in words what is being fetched. */
export function Loading({ what }: { readonly what: string }) {
  const { t } = useText();
  return <p className="faint" role="status" data-waiting="">{t('ui.loading', { what })}</p>;
}
