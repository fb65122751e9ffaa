import type { ReactNode } from 'react';
import { useMe } from '../../hooks/useMe.ts';
import { SignOut } from '../../features/identity/components/SignOut.tsx';
import { TitleFrame } from './TitleFrame.tsx';

interface TitleBlockProps {
  /** The way home, about the mark. */
  readonly home: (mark: ReactNode) => ReactNode;
  /** Where else to go. */
  readonly nav?: ReactNode;
}

/** The title block of whoever has a session. A customer's name is sealed: their session carries none. */
export function TitleBlock({ home, nav }: TitleBlockProps) {
  const { me } = useMe();
  return <TitleFrame home={home} nav={nav} name={me?.name ?? ''} company={me ? <span className="faint">{me.company.name}</span> : null}>{me ? <SignOut /> : null}</TitleFrame>;
}
