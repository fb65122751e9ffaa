import type { ReactNode } from 'react';
import './Empty.css';

interface EmptyProps {
  /** What goes here. */
  readonly what: string;
  /** Why it matters. */
  readonly why: string;
  /** The first step. */
  readonly step?: ReactNode;
}

/** An empty place says what goes here and why, and offers the first step. */
export function Empty({ what, why, step }: EmptyProps) {
  return (
    <div className="empty">
      <p className="empty-what">{what}</p>
      <p className="faint">{why}</p>
      {step === undefined ? null : <div className="row">{step}</div>}
    </div>
  );
}
