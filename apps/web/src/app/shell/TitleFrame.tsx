import type { ReactNode } from 'react';
import { Icon } from '../../components/Icons.tsx';
import { useText } from '../../lib/reader.tsx';
import { ReaderSwitches } from './ReaderSwitches.tsx';
import './TitleBlock.css';

interface TitleFrameProps {
  /** The way home, about the mark. */
  readonly home: (mark: ReactNode) => ReactNode;
  /** Whose sheet it is. */
  readonly company?: ReactNode;
  /** Where else to go. */
  readonly nav?: ReactNode;
  /** Who reads; empty where nobody is named. */
  readonly name?: string;
  /** What stands below the switches of the reader. */
  readonly children?: ReactNode;
}

/** Ruled like the title block of a drawing: whose sheet it is, where else to go, and how this person reads. */
export function TitleFrame({ home, company, nav, name = '', children }: TitleFrameProps) {
  const { t } = useText();
  return (
    <header className="title-block no-print">
      <div className="title-cell title-name">
        {home(<><Icon name="peg" />{'Yardfall'}</>)}
        {company}
      </div>
      {nav ?? <div className="title-cell title-nav" />}
      <div className="title-cell title-reader">
        <button type="button" className="title-person" popoverTarget="reader" aria-label={name === '' ? undefined : t('ui.readingOf', { name })}>
          {name === '' ? t('ui.reading') : name}
        </button>
        <div id="reader" popover="auto" className="title-panel">
          <ReaderSwitches />
          {children}
        </div>
      </div>
    </header>
  );
}
