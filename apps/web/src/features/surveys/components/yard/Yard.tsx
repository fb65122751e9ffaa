import { useState } from 'react';
import { Loading } from '../../../../components/Loading.tsx';
import { Notice } from '../../../../components/Notice.tsx';
import { Select } from '../../../../components/Select.tsx';
import { KeepProblem } from '../../../../components/KeepProblem.tsx';
import { setSun, useSun } from '../../../../hooks/useSun.ts';
import { useWidth } from '../../../../hooks/useWidth.ts';
import { useText } from '../../../../lib/reader.tsx';
import { useYardBook } from '../../api/useYardBook.ts';
import { LevelWork } from './LevelWork.tsx';
import { Why } from './Why.tsx';
import './yard.css';

const deskFrom = 900;
const works = ['levels', 'why'] as const;

/** The survey of one visit, on the spot: levels and why it is wet. */
export function Yard({ jobId }: { readonly jobId: string }) {
  const { t } = useText();
  const [ref, width] = useWidth<HTMLDivElement>();
  const [work, setWork] = useState<(typeof works)[number]>('levels');
  const sun = useSun();
  const yard = useYardBook(jobId);
  return (
    <div ref={ref} className="yard">
      <div className="yard-bar">
        {works.map((one) => <button key={one} type="button" className="yard-tab" aria-pressed={work === one} onClick={() => setWork(one)}>{t(`surveys.yard.${one}`)}</button>)}
        <button type="button" className="yard-tab yard-sun" aria-pressed={sun} title={t('ui.sunOn')} onClick={() => setSun(!sun)}>{t('ui.sun')}</button>
      </div>
      <KeepProblem problem={yard.problem} />
      {yard.disputed.length > 0 ? <Notice severity="caution"><p>{t('surveys.yard.disputed', { n: yard.disputed.length })}</p></Notice> : null}
      {yard.pending || width === 0 ? <Loading what={t('surveys.loading')} /> : work === 'levels' ? <LevelWork jobId={jobId} yard={yard} desk={width >= deskFrom} /> : <Why jobId={jobId} yard={yard} />}
      {yard.visits.length > 1 ? <div className="crew-form"><Select label={t('surveys.yard.visit')} value={yard.visit ?? ''} choices={yard.visits.map(({ id, name }) => ({ value: id, label: name }))} onChange={yard.openVisit} /></div> : null}
    </div>
  );
}
