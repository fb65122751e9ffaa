import { useText } from '../lib/reader.tsx';
import './FindingMark.css';

export type MarkedSeverity = 'stop' | 'caution' | 'note' | 'refer';

interface FindingMarkProps {
  readonly severity: MarkedSeverity;
  /** Leave the word to the screen reader when the sentence beside it says it. */
  readonly wordUnseen?: boolean;
}

/** Filled square = stop, triangle = caution, dash = note, crossed square = for an engineer; always with its word. */
export function FindingMark({ severity, wordUnseen = false }: FindingMarkProps) {
  const { t } = useText();
  return (
    <span className={`mark mark-${severity}`}>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">{shapes[severity]}</svg>
      <span className={wordUnseen ? 'unseen' : undefined}>{t(`ui.mark.${severity}`)}</span>
    </span>
  );
}

const shapes = {
  stop: <rect x="2" y="2" width="12" height="12" fill="currentColor" />,
  caution: <path d="M8 2 15 14H1z" fill="none" stroke="currentColor" strokeWidth="2" strokeLinejoin="miter" />,
  note: <path d="M1 8h14" stroke="currentColor" strokeWidth="3" />,
  refer: <path d="M2 2h12v12H2zM2 2l12 12M14 2 2 14" fill="none" stroke="currentColor" strokeWidth="2" />,
} as const;
