import type { ReactNode } from 'react';
import { SkipLink } from '../../components/SkipLink.tsx';
import './Shell.css';

interface SheetProps {
  readonly title: ReactNode;
  readonly children: ReactNode;
  /** What stands below the content on every page. */
  readonly foot?: ReactNode;
}

/** The sheet: a title block along its top, the content below. */
export function Sheet({ title, children, foot }: SheetProps) {
  return (
    <>
      <SkipLink />
      <div className="sheet">
        {title}
        <main id="content" className="sheet-content" tabIndex={-1}>{children}</main>
        {foot}
      </div>
    </>
  );
}
