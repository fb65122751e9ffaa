import { useEffect, type ReactNode } from 'react';
import './Page.css';

interface PageProps {
  readonly title: string;
  /** One line under the title: what this place is for. */
  readonly lead?: ReactNode;
  readonly narrow?: boolean;
  readonly children: ReactNode;
}

/** One sheet with its title; the browser's own title follows it. */
export function Page({ title, lead, narrow = false, children }: PageProps) {
  useEffect(() => {
    document.title = `${title} · Yardfall`;
  }, [title]);
  return (
    <div className={narrow ? 'page page-narrow' : 'page'}>
      <header className="page-head">
        <h1 tabIndex={-1}>{title}</h1>
        {lead === undefined ? null : <p className="faint measure">{lead}</p>}
      </header>
      {children}
    </div>
  );
}
