import { Link, Outlet, useParams } from '@tanstack/react-router';
import { OnThisPhone } from '../../components/OnThisPhone.tsx';
import { useMe } from '../../hooks/useMe.ts';
import { useNews } from '../../hooks/useNews.ts';
import { useStock } from '../../hooks/useStock.ts';
import { setSun, useSun, useSunOnPage } from '../../hooks/useSun.ts';
import { useReader, useText } from '../../lib/reader.tsx';
import { Sheet } from './Sheet.tsx';
import { TitleBlock } from './TitleBlock.tsx';

/** The sheet of a member. */
export function Shell() {
  const { me } = useMe();
  const member = me?.kind === 'member';
  useSunOnPage();
  useNews(member);
  return (
    <Sheet title={<TitleBlock home={(mark) => <Link to="/" className="title-mark">{mark}</Link>} nav={member ? <Nav /> : undefined} />} foot={member ? <div className="sheet-foot no-print"><Away /><OnThisPhone /></div> : null}>
      <Outlet />
    </Sheet>
  );
}

function Nav() {
  const { me, may } = useMe();
  const { t } = useText();
  // A crew's row has room for what is used outside instead.
  const office = me?.roles.some((role) => role !== 'crew') === true;
  return (
    <nav className="title-cell title-nav" aria-label={t('ui.main')}>
      <Link to="/" activeOptions={{ exact: true }}>{t('ui.home')}</Link>
      {may('jobs.create') ? <Link to="/jobs" activeOptions={{ exact: true }}>{t('jobs.all')}</Link> : null}
      {may('jobs.create') ? <Link to="/jobs/new">{t('ui.newJob')}</Link> : null}
      {may('company.read') && office ? <Link to="/company">{t('ui.company')}</Link> : null}
      <Link to="/waits">{t('ui.waits.title')}</Link>
      <InTheField />
    </nav>
  );
}

/** One tap for who works outside: the other language, and black on white in big type. */
function InTheField() {
  const { me } = useMe();
  const { t } = useText();
  const reader = useReader();
  const sun = useSun();
  if (!sun && me?.roles.includes('crew') !== true) return null;
  const other = reader.asked === 'en' ? 'es' : 'en';
  return (
    <>
      <button type="button" className="title-switch" lang={other} onClick={() => reader.change({ language: other })}>{t(`ui.language.${other}`)}</button>
      <button type="button" className="title-switch" aria-pressed={sun} title={t('ui.sunOn')} onClick={() => setSun(!sun)}>{t('ui.sun')}</button>
    </>
  );
}

/** Says so while the pages are shown from what the phone took along; mounted, it takes along what a day needs. */
function Away() {
  const { t } = useText();
  const { jobId = null } = useParams({ strict: false });
  return useStock(jobId) ? <p className="faint sheet-away" role="status">{t('ui.waits.away')}</p> : null;
}
