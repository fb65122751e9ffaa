import { useText } from '../lib/reader.tsx';
import './SkipLink.css';

export function SkipLink() {
  const { t } = useText();
  return <a className="skip-link" href="#content">{t('ui.skip')}</a>;
}
