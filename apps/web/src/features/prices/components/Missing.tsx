import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { emptyLine, withLine, type EditedLine, type EditedSheet } from '../model/sheet.ts';
import { LineDialog } from './LineDialog.tsx';

interface MissingProps {
  readonly codes: readonly string[];
  readonly sheet: EditedSheet;
  readonly onChange: ((sheet: EditedSheet) => void) | null;
}

/** What the design needs and no line prices, each by its name. */
export function Missing({ codes, sheet, onChange }: MissingProps) {
  const { t, say } = useText();
  const [opened, setOpened] = useState<EditedLine | null>(null);
  const missing = codes.filter((code) => !sheet.lines.some((line) => line.code === code)).map((code) => ({ code, name: say(`prices.item.${code}`) }));
  if (missing.length === 0) return null;
  const close = () => setOpened(null);
  return (
    <Notice severity="caution" title={t('prices.missing', { n: missing.length })}>
      <p>{t('prices.missingWhy')}</p>
      <ul className="price-missing">
        {missing.map(({ code, name }) => (
          <li key={code}>{onChange ? <Button onClick={() => setOpened(emptyLine(code, name, 'override'))}>{t('prices.addMissing', { name })}</Button> : name}</li>
        ))}
      </ul>
      {onChange && opened ? <LineDialog key={opened.key} line={opened} isNew onClose={close} onRemove={close} onDone={(line) => { onChange(withLine(sheet, line)); close(); }} /> : null}
    </Notice>
  );
}
