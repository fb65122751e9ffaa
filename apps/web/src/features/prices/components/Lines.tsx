import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { useText } from '../../../lib/reader.tsx';
import { byKind, emptyLine, freeCode, withLine, withoutLine, type EditedLine, type EditedSheet } from '../model/sheet.ts';
import { LineDialog } from './LineDialog.tsx';

interface LinesProps {
  readonly sheet: EditedSheet;
  /** Null where nothing can be changed. */
  readonly onChange: ((sheet: EditedSheet) => void) | null;
}

/** The lines under their kind of cost; a press on one opens it. */
export function Lines({ sheet, onChange }: LinesProps) {
  const { t } = useText();
  const [opened, setOpened] = useState<EditedLine | null>(null);
  const isNew = opened !== null && !sheet.lines.some((line) => line.key === opened.key);
  return (
    <div className="stack">
      {byKind(sheet.lines).map(({ kind, lines }) => (
        <section key={kind} aria-label={t(`prices.kind.${kind}`)}>
          <h4 className="price-kind">{t(`prices.kind.${kind}`)}</h4>
          <ol className="price-lines">{lines.map((line) => <Line key={line.key} line={line} onOpen={onChange ? () => setOpened(line) : null} />)}</ol>
        </section>
      ))}
      {onChange ? (
        <div className="row">
          <Button onClick={() => setOpened(emptyLine(freeCode(sheet.lines), '', 'override'))}>{t('prices.addLine')}</Button>
          <Button onClick={() => setOpened(emptyLine(freeCode(sheet.lines), '', 'allowance'))}>{t('prices.addAllowance')}</Button>
        </div>
      ) : null}
      {onChange && opened ? (
        <LineDialog key={opened.key} line={opened} isNew={isNew} onClose={() => setOpened(null)}
          onDone={(line) => { onChange(withLine(sheet, line)); setOpened(null); }}
          onRemove={() => { onChange(withoutLine(sheet, opened.key)); setOpened(null); }} />
      ) : null}
    </div>
  );
}

function Line({ line, onOpen }: { readonly line: EditedLine; readonly onOpen: (() => void) | null }) {
  const { t, q } = useText();
  const notes = [
    line.origin === 'allowance' ? t('prices.origin.allowance') : null,
    line.origin === 'override' && line.reason ? t('prices.origin.override', { reason: line.reason }) : null,
    line.taxable ? null : t('prices.noTax'),
  ].filter((note) => note !== null);
  return (
    <li>
      <span>
        {onOpen ? <button type="button" className="price-open" aria-label={t('prices.changeLine', { name: line.name })} onClick={onOpen}>{line.name}</button> : line.name}
        {notes.length > 0 ? <span className="faint price-notes">{notes.join(' · ')}</span> : null}
      </span>
      <span className="figure faint">{t('prices.amount', { quantity: line.quantity, unit: t(`prices.unit.${line.unit}`), cost: line.unitCost / 100 })}</span>
      <span className="figure price-cost">{line.cost === null ? t('prices.changedCost') : q('money', line.cost)}</span>
    </li>
  );
}
