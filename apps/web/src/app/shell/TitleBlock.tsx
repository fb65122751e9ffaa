import type { ReactNode } from 'react';
import { Icon } from '../../components/Icons.tsx';
import { useMe } from '../../hooks/useMe.ts';
import { useText } from '../../lib/reader.tsx';
import { SignOut } from '../../features/identity/components/SignOut.tsx';
import { ReaderSwitches } from './ReaderSwitches.tsx';
import './TitleBlock.css';

interface TitleBlockProps {
  /** The way home, about the mark. */
  readonly home: (mark: ReactNode) => ReactNode;
  /** Where else to go. */
  readonly nav?: ReactNode;
}

/** Ruled like the title block of a drawing: whose sheet it is, where else to go, and how this person reads. */
export function TitleBlock({ home, nav }: TitleBlockProps) {
  const { me } = useMe();
  const { t } = useText();
  // A customer's name is sealed: their session carries none.
  const name = me?.name ?? '';
  return (
    <header className="title-block no-print">
      <div className="title-cell title-name">
        {home(<><Icon name="peg" />{'Yardfall'}</>)}
        {me ? <span className="faint">{me.company.name}</span> : null}
      </div>
      {nav ?? <div className="title-cell title-nav" />}
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
