import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { section, sectionTable, type SectionOptions } from '@yardfall/drawing';
import { useState } from 'react';
import { Choices } from '../../../components/Choices.tsx';
import { Drawing } from '../../../components/Drawing.tsx';
import { useText } from '../../../lib/reader.tsx';
import { DrawingTable } from './DrawingTable.tsx';

interface SectionDrawingProps {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation | null;
  /** Sample of the design storm whose water is drawn; null draws none. */
  readonly moment: number | null;
  readonly selected?: string | null;
  readonly onSelect?: (part: string | null) => void;
  readonly states?: SectionOptions['states'];
}

/** The long profile, to scale, with the water of one moment of the design storm. */
export function SectionDrawing({ document, evaluation, moment, selected = null, onSelect, states = {} }: SectionDrawingProps) {
  const { t, units } = useText();
  const [window, setWindow] = useState<'whole' | 'house'>('whole');
  const run = evaluation?.results.storm ?? null;
  const water = { pond: (moment === null ? null : run?.pondLevel[moment]) ?? null, basin: (moment === null ? null : run?.basinLevel[moment]) ?? null };
  const options = (size: { width: number; height: number }) => ({ ...size, window, water, states, scaleUnit: units === 'us' ? ('foot' as const) : ('metre' as const) });
  const drawn = section(document, evaluation, options({ width: 1000, height: 420 }));
  const partName = (id: string) => [...document.system.parts, ...document.site.sills, ...document.site.lowSpots, ...document.site.candidateOutlets].find((part) => part.id === id)?.name ?? id;
  const select = onSelect ? { onSelect: (part: string) => onSelect(part), selected, partName } : {};
  return (
    <div className="stack">
      <Choices label={t('designs.window')} look="quiet" value={window} onChange={setWindow} choices={[{ value: 'whole', label: t('designs.window.whole') }, { value: 'house', label: t('designs.window.house') }]} />
      <Drawing title={t('designs.sectionPicture')} height={(width) => Math.min(460, Math.max(320, width * 0.36))} display={(size) => section(document, evaluation, options(size))}
        table={<DrawingTable table={sectionTable(document, evaluation, drawn)} />} {...select} />
    </div>
  );
}
