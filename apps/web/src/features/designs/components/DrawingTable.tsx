import type { DrawingTable as Drawn } from '@yardfall/drawing';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';

/** What a drawing says, as a table. */
export function DrawingTable({ table }: { readonly table: Drawn }) {
  const { say } = useText();
  const columns = table.columns.map((head, at) => ({ key: String(at), head: say(head.code, head.params), figure: at > 0 }));
  const rows = table.rows.map((cells, at) => ({ key: String(at), cells: Object.fromEntries(cells.map((cell, column) => [String(column), say(cell.code, cell.params)])) }));
  return <Table wraps caption={say(table.caption.code, table.caption.params)} columns={columns} rows={rows} />;
}
