import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { section, sectionTable, type SectionOptions } from '@yardfall/drawing';
import { memo, useDeferredValue, useState } from 'react';
import { Choices } from '../../../components/Choices.tsx';
import { Drawing, type DrawingSize } from '../../../components/Drawing.tsx';
import { DrawingHandles } from '../../../components/DrawingHandles.tsx';
import { PhotoPins } from '../../../components/photo/PhotoPins.tsx';
import { pinsOf } from '../../../components/photo/place.ts';
import { usePhotosNow } from '../../../hooks/usePhotosNow.ts';
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
  /** Levels can be dragged; told while the hand moves and when it lets go. */
  readonly onLevel?: (part: string, field: string, level: number, done: boolean) => void;
  /** Whose photos stand where they were taken. */
  readonly jobId: string;
}

const foot = 0.3048;
/** A phone has no room for the whole run and its lettering: it begins at the house. */
const phone = '(max-width: 640px)';

/** Levels that a hand on the section may move, by the name of their field. */
const handleNames = {
  grateLevel: 'designs.field.grateLevel', invertUp: 'designs.field.invertUp', invertDown: 'designs.field.invertDown', invertOut: 'designs.field.invertOut', floorLevel: 'designs.field.floorLevel',
  rimLevel: 'designs.field.rimLevel', inletInvert: 'designs.field.inletInvert', offLevel: 'designs.field.offLevel', onLevel: 'designs.field.onLevel', alarmLevel: 'designs.field.alarmLevel',
  highPoint: 'designs.field.highPoint', waterLevel: 'designs.field.waterLevel', groundLevel: 'designs.field.groundLevel', unsealedJointLevel: 'designs.field.unsealedJointLevel', level: 'designs.field.level',
} as const;
type HandleField = keyof typeof handleNames;
const isMovable = (field: string): boolean => field in handleNames;

/** The long profile, to scale, with the water of one moment of the design storm. */
export function SectionDrawing({ document, evaluation, moment, selected = null, onSelect, states = {}, onLevel, jobId }: SectionDrawingProps) {
  const { t, q, units } = useText();
  const [window, setWindow] = useState<'whole' | 'house'>(() => (matchMedia(phone).matches ? 'house' : 'whole'));
  const options = (size: { width: number; height: number }) => ({ ...size, window, water: waterOf(evaluation, moment), states, pins: pinsOf(photos), scaleUnit: units === 'us' ? ('foot' as const) : ('metre' as const) });
  const partName = (id: string) => [...document.system.parts, ...document.site.sills, ...document.site.lowSpots, ...document.site.candidateOutlets].find((part) => part.id === id)?.name ?? id;
  const select = onSelect ? { onSelect: (part: string) => onSelect(part), selected, partName } : {};
  const photos = usePhotosNow(jobId);
  const over = (display: ReturnType<typeof section>, size: DrawingSize) => (
    <>
      {onLevel === undefined ? null : (
        <DrawingHandles extent={display.extent} size={size} handles={display.handles.filter(({ field }) => isMovable(field))} step={units === 'us' ? 0.01 * foot : 0.002} levelText={(level) => q('level', level)}
          nameOf={({ part, field }) => t('designs.handle', { part: partName(part), field: t(handleNames[field as HandleField]) })} onLevel={({ part, field }, level, done) => onLevel(part, field, level, done)} />
      )}
      <PhotoPins jobId={jobId} photos={photos} display={display} size={size} />
    </>
  );
  return (
    <div className="stack">
      <Choices label={t('designs.window')} look="quiet" value={window} onChange={setWindow} choices={[{ value: 'whole', label: t('designs.window.whole') }, { value: 'house', label: t('designs.window.house') }]} />
      <Drawing title={t('designs.sectionPicture')} height={(width) => Math.min(460, Math.max(320, width * 0.36))} display={(size) => section(document, evaluation, options(size))}
        table={<SectionTable document={useDeferredValue(document)} evaluation={useDeferredValue(evaluation)} moment={useDeferredValue(moment)} />} over={over} {...select} />
    </div>
  );
}

function waterOf(evaluation: Evaluation | null, moment: number | null): SectionOptions['water'] {
  const run = moment === null ? null : (evaluation?.results.storm ?? null);
  return { pond: (moment === null ? null : run?.pondLevel[moment]) ?? null, basin: (moment === null ? null : run?.basinLevel[moment]) ?? null };
}

/** The same as a table, when there is time. */
const SectionTable = memo(({ document, evaluation, moment }: Pick<SectionDrawingProps, 'document' | 'evaluation' | 'moment'>) => (
  <DrawingTable table={sectionTable(document, evaluation, section(document, evaluation, { width: 1000, height: 420, water: waterOf(evaluation, moment) }))} />
));
