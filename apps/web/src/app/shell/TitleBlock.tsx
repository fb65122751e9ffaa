import { Link } from '@tanstack/react-router';
import { Icon } from '../../components/Icons.tsx';
import { useMe } from '../../hooks/useMe.ts';
import { useText } from '../../lib/reader.tsx';
import { SignOut } from '../../features/identity/components/SignOut.tsx';
import { ReaderSwitches } from './ReaderSwitches.tsx';
import './TitleBlock.css';

/** Ruled like the title block of a drawing: whose sheet it is, where else to go, and how this person reads. */
export function TitleBlock() {
  const { me, may } = useMe();
  const { t } = useText();
  const member = me?.kind === 'member';
  // A customer's name is sealed: their session carries none.
  const name = me?.name ?? '';
  return (
    <header className="title-block no-print">
      <div className="title-cell title-name">
        <Link to={me?.kind === 'customer' ? '/drain' : '/'} className="title-mark"><Icon name="peg" />{'Yardfall'}</Link>
        {me ? <span className="faint">{me.company.name}</span> : null}
      </div>
      {member ? (
        <nav className="title-cell title-nav" aria-label={t('ui.main')}>
          <Link to="/" activeOptions={{ exact: true }}>{t('ui.home')}</Link>
          {may('jobs.create') ? <Link to="/jobs" activeOptions={{ exact: true }}>{t('jobs.all')}</Link> : null}
          {may('jobs.create') ? <Link to="/jobs/new">{t('ui.newJob')}</Link> : null}
          {may('company.read') ? <Link to="/company">{t('ui.company')}</Link> : null}
        </nav>
      ) : <div className="title-cell title-nav" />}
      <div className="title-cell title-reader">
        <button type="button" className="title-person" popoverTarget="reader" aria-label={name === '' ? undefined : t('ui.readingOf', { name })}>
          {name === '' ? t('ui.reading') : name}
        </button>
        <div id="reader" popover="auto" className="title-panel">
          <ReaderSwitches />
          {me ? <SignOut /> : null}
        </div>
      </div>
    </header>
  );
}
