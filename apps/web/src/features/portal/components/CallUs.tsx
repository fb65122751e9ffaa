import { useText } from '../../../lib/reader.tsx';

/** The company's number, to be tapped; nothing where the company has typed none. */
export function CallUs({ phone }: { readonly phone: string }) {
  const { t } = useText();
  if (phone === '') return null;
  return <p><a className="drain-call" href={`tel:${phone.replace(/[^+\d]/g, '')}`}>{t('portal.callUs', { phone })}</a></p>;
}
