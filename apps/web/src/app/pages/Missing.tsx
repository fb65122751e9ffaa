import { Link } from '@tanstack/react-router';
import { Page } from '../../components/Page.tsx';
import { useText } from '../../lib/reader.tsx';

export function Missing() {
  const { t } = useText();
  return (
    <Page narrow title={t('ui.missing.title')} lead={t('ui.missing.body')}>
      <div><Link to="/" className="button">{t('ui.missing.home')}</Link></div>
    </Page>
  );
}
