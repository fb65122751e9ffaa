import type { ReactNode } from 'react';
import './Table.css';

export interface Column {
  readonly key: string;
  readonly head: ReactNode;
  /** Figures stand right-aligned in the mono face, each with its unit. */
  readonly figure?: boolean;
}

export interface Row {
  readonly key: string;
  readonly cells: Readonly<Record<string, ReactNode>>;
  /** Drawn with a heavier rule: totals. */
  readonly strong?: boolean;
}

interface TableProps {
  readonly caption: ReactNode;
  /** Keep the caption for screen readers only, when a heading says it already. */
  readonly captionUnseen?: boolean;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** On a phone each row becomes a short list of its cells, with `labelled` each under the head of its column. */
  readonly stacks?: boolean | 'labelled';
  /** Cells of words and figures: on a phone they break rather than run out of sight. */
  readonly wraps?: boolean;
}

export function Table({ caption, captionUnseen = false, columns, rows, stacks = false, wraps = false }: TableProps) {
  return (
    <div className="table-scroll" tabIndex={0}>
      <table className={stacks ? `table table-stacks${stacks === 'labelled' ? ' table-labelled' : ''}` : `table${wraps ? ' table-wraps' : ''}`}>
        <caption className={captionUnseen ? 'unseen' : undefined}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => <th key={column.key} scope="col" className={column.figure ? 'cell-figure' : undefined}>{column.head}</th>)}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key} className={row.strong ? 'table-strong' : undefined}>
              {columns.map((column, at) => {
                const look = column.figure ? 'cell-figure figure' : undefined;
                return at === 0
                  ? <th key={column.key} scope="row" className={look}>{row.cells[column.key]}</th>
                  : <td key={column.key} className={look} data-head={stacks === 'labelled' && typeof column.head === 'string' ? column.head : undefined}>{row.cells[column.key]}</td>;
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
