import { Suspense, type ReactNode } from 'react';
import { ErrorBoundary } from '../../components/ErrorBoundary.tsx';
import { Loading } from '../../components/Loading.tsx';
import { useText } from '../../lib/reader.tsx';

interface JobPartProps {
  readonly id: string;
  readonly title: string;
  readonly open: boolean;
  readonly onToggle: () => void;
  /** How it stands, in a line, told while it is closed. */
  readonly standing?: ReactNode;
  readonly children: ReactNode;
}

/** One part of the record under its heading. A closed part fetches nothing. */
export function JobPart({ id, title, open, onToggle, standing = null, children }: JobPartProps) {
  return (
    <section className="stack job-part" aria-labelledby={id}>
      <h2 id={id} tabIndex={-1}>
        <button type="button" aria-expanded={open} aria-controls={open ? `${id}-body` : undefined} onClick={onToggle}>{title}</button>
      </h2>
      {open || standing === null ? null : <p className="job-part-standing faint">{standing}</p>}
      {open ? <div id={`${id}-body`} className="stack"><Fetched>{children}</Fetched></div> : null}
    </section>
  );
}

/** A part that loads its code and its data by itself, and whose failure leaves the rest of the page standing. */
export function Fetched({ children }: { readonly children: ReactNode }) {
  const { t } = useText();
  return <ErrorBoundary><Suspense fallback={<Loading what={t('ui.part')} />}>{children}</Suspense></ErrorBoundary>;
}
