import { Outlet } from '@tanstack/react-router';
import { OnThisPhone } from '../../components/OnThisPhone.tsx';
import { SkipLink } from '../../components/SkipLink.tsx';
import { useMe } from '../../hooks/useMe.ts';
import { TitleBlock } from './TitleBlock.tsx';
import './Shell.css';

/** The sheet: a title block along its top, the content below. */
export function Shell() {
  const { me } = useMe();
  return (
    <>
      <SkipLink />
      <div className="sheet">
        <TitleBlock />
        <main id="content" className="sheet-content" tabIndex={-1}>
          <Outlet />
        </main>
        {me?.kind === 'member' ? <OnThisPhone /> : null}
      </div>
    </>
  );
}
