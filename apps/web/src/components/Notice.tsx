import type { ReactNode } from 'react';
import { useProblemText } from '../hooks/useProblemText.ts';
import { FindingMark, type MarkedSeverity } from './FindingMark.tsx';
import './Notice.css';

interface NoticeProps {
  readonly severity?: MarkedSeverity;
  readonly title?: ReactNode;
  readonly children?: ReactNode;
  /** The one thing to do about it. */
  readonly action?: ReactNode;
}

/** Something to know, ruled off at its left edge with the shape of its weight. */
export function Notice({ severity = 'note', title, children, action }: NoticeProps) {
  return (
    <div className={`notice notice-${severity}`} role={severity === 'stop' ? 'alert' : 'note'}>
      <FindingMark severity={severity} />
      <div className="notice-body">
        {title === undefined ? null : <p className="notice-title">{title}</p>}
        {children}
        {action}
      </div>
    </div>
  );
}

/** The sentence of a refused or failed request; nothing when there is none. */
export function ProblemNotice({ problem, action }: { readonly problem: unknown; readonly action?: ReactNode }) {
  const sentence = useProblemText();
  if (problem === null || problem === undefined) return null;
  return <Notice severity="stop" action={action}><p>{sentence(problem)}</p></Notice>;
}
