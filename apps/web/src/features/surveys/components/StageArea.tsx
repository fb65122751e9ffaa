import { Button } from '../../../components/Button.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { ContentProps } from './LevelBook.tsx';

/** How wide the puddle is at each height: how many gallons it holds before it reaches the sill. */
export function StageArea({ content, onChange }: ContentProps) {
  const { t, units } = useText();
  const rows = content.stageArea;
  const put = (stageArea: typeof rows) => onChange({ ...content, stageArea });
  return (
    <div className="stack">
      <p className="faint measure">{t('surveys.stageAreaWhy')}</p>
      <ol className="stage-area">
        {rows.map((row, at) => (
          <li key={at}>
            <LengthField label={t('surveys.stageLevel')} kind="level" value={row.level} onChange={(level) => { if (level !== null) put(rows.with(at, { ...row, level })); }} />
            <NumberField label={t('surveys.pondArea')} value={row.area} unit={units === 'us' ? 'ft²' : 'm²'} perUnit={units === 'us' ? 0.09290304 : 1} decimals={1} onChange={(area) => { if (area !== null) put(rows.with(at, { ...row, area })); }} />
            <Button kind="text" onClick={() => put(rows.filter((_, other) => other !== at))}>{t('surveys.removeStage')}</Button>
          </li>
        ))}
      </ol>
      <div className="row"><Button onClick={() => put([...rows, { level: rows.at(-1)?.level ?? content.levelBook.benchMark.level, area: 0 }])}>{t('surveys.addStage')}</Button></div>
    </div>
  );
}
