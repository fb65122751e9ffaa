import type { DesignDocument, Working, WorkingStep, WorkingSymbol } from '@yardfall/calc';
import { isNumericQuantity, siQuantity } from '@yardfall/text';
import type { ReactNode } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { placeWords } from '../model/editWords.ts';
import { originOf } from '../model/workings.ts';

interface WorkingSheetProps {
  readonly document: DesignDocument;
  readonly workings: readonly Working[];
  readonly working: Working;
  readonly onOpen: (result: string) => void;
  readonly onBack?: () => void;
}

/** One number worked out: formula, every symbol with its value and where it came from, source. A reader with a calculator comes to the same. */
export function WorkingSheet({ document, workings, working, onOpen, onBack }: WorkingSheetProps) {
  const text = useText();
  const { t, q, say } = text;
  const value = (unit: string, amount: number) => q(isNumericQuantity(unit) ? unit : 'number', amount);
  const raw = (unit: string, amount: number) => siQuantity(text.language, isNumericQuantity(unit) ? unit : 'number', amount);
  const row = ({ symbol, meaning, unit, value: amount }: WorkingSymbol | WorkingStep, from: ReactNode) => ({
    key: symbol, cells: { symbol: <var>{symbol}</var>, meaning: say(`workings.meaning.${meaning}`), value: value(unit, amount), raw: raw(unit, amount), from },
  });
  return (
    <div className="stack working">
      {onBack ? <div className="row"><Button kind="text" onClick={onBack}>{t('studies.working.back')}</Button></div> : null}
      <p className="working-value"><strong>{value(working.unit, working.value)}</strong> <span className="faint">{raw(working.unit, working.value)}</span></p>
      <p className="figure working-formula">{working.formula}</p>
      {working.solves === null ? null : <p>{t('studies.working.trial', { symbol: working.solves })}</p>}
      <Table stacks="labelled" caption={t('studies.working.symbols')}
        columns={[
          { key: 'symbol', head: t('studies.working.symbol') }, { key: 'meaning', head: t('studies.working.meaning') }, { key: 'value', head: t('studies.working.value'), figure: true },
          { key: 'raw', head: t('studies.working.raw'), figure: true }, { key: 'from', head: t('studies.working.from') },
        ]}
        rows={[
          ...working.symbols.map((symbol) => row(symbol, <From symbol={symbol} document={document} workings={workings} onOpen={onOpen} />)),
          ...working.steps.map((step) => row(step, <span className="figure working-formula">{`${step.symbol} = ${step.formula}`}</span>)),
        ]} />
      <p className="faint">{t('studies.working.source')} <span lang="en">{working.source}</span></p>
      {working.tolerance > 1e-6 ? <p className="faint">{t('studies.working.tolerance', { share: working.tolerance })}</p> : null}
    </div>
  );
}

interface FromProps extends Pick<WorkingSheetProps, 'document' | 'workings' | 'onOpen'> {
  readonly symbol: WorkingSymbol;
}

/** What was typed, by its name; another number, to open; or the run itself. */
function From({ symbol, document, workings, onOpen }: FromProps) {
  const text = useText();
  const origin = originOf(symbol.from, document, workings);
  switch (origin.kind) {
    case 'design': return placeWords([document], origin.path, text);
    case 'result': return <button type="button" className="figure-open" onClick={() => onOpen(origin.result)}>{text.say(`workings.${origin.code}`)}</button>;
    case 'run': return text.t('studies.working.run');
    case 'method': return text.t('studies.working.method');
  }
}
