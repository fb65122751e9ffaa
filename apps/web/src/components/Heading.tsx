import type { ReactNode } from 'react';
import './Heading.css';

interface HeadingProps {
  readonly level?: 2 | 3;
  readonly id?: string;
  /** Said at the right end of the line: a count, a date, a state in words. */
  readonly aside?: ReactNode;
  readonly children: ReactNode;
}

/** A plain heading under a hairline, as on a printed sheet. */
export function Heading({ level = 2, id, aside, children }: HeadingProps) {
  const Tag = level === 2 ? 'h2' : 'h3';
  return (
    <div className={`heading heading-${level}`}>
      <Tag id={id} tabIndex={id === undefined ? undefined : -1}>{children}</Tag>
      {aside === undefined ? null : <span className="faint">{aside}</span>}
    </div>
  );
}
