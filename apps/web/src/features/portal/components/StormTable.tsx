import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { casesOf, levelWords, memberOf, periodsOf, type Member } from '../model/water.ts';

interface StormTableProps {
  readonly family: readonly Member[];
  readonly sillLevel: number;
}

/** Every position of the slider in words, for a reader who does not see the drawing. */
export function StormTable({ family, sillLevel }: StormTableProps) {
  const { t } = useText();
  const columns = [{ key: 'storm', head: t('portal.table.storm') }, ...casesOf(family).map((key) => ({ key, head: t(`portal.case.${key}`) }))];
  const rows = periodsOf(family).map((years) => ({
    key: String(years),
    cells: {
      storm: t('portal.storm.short', { years }),
      ...Object.fromEntries(casesOf(family).map((key) => {
        const { code, params } = levelWords(memberOf(family, key, years), sillLevel);
        return [key, t(code, params)];
      })),
    },
  }));
  return <Table stacks="labelled" caption={t('portal.table')} columns={columns} rows={rows} />;
}
