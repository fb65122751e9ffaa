import { Outlet } from '@tanstack/react-router';
import { SkipLink } from '../../components/SkipLink.tsx';
import { TitleBlock } from './TitleBlock.tsx';
import './Shell.css';

/** The sheet: a title block along its top, the content below. */
export function Shell() {
  return (
    <>
      <SkipLink />
      <div className="sheet">
        <TitleBlock />
        <main id="content" className="sheet-content" tabIndex={-1}>
          <Outlet />
        </main>
      </div>
    </>
  );
}
