import type { PortalDrawing } from '@yardfall/contracts';
import { section } from '@yardfall/drawing';
import { useState } from 'react';
import { Choices } from '../../../components/Choices.tsx';
import { Drawing } from '../../../components/Drawing.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Slider } from '../../../components/Slider.tsx';
import { useText } from '../../../lib/reader.tsx';
import { plainSection, wordsOfKinds } from '../model/plainSection.ts';
import { casesOf, levelWords, memberOf, periodsOf, type Case } from '../model/water.ts';
import { StormTable } from './StormTable.tsx';

/** Half of a word under the scale stands beyond either end [px]. */
const ends = { left: 34, right: 44 };

/** The yard cut through, with the highest water of the storm and the case that the reader picks. */
export function WaterAtTheDoor({ drawing: { document, sillLevel, family } }: { readonly drawing: PortalDrawing }) {
  const { t, units } = useText();
  const periods = periodsOf(family);
  const known = casesOf(family);
  const [at, setAt] = useState(() => Math.max(0, periods.indexOf(document.rain.designReturnPeriod)));
  const [chosen, setChosen] = useState<Case>(known.includes('system') ? 'system' : (known[0] ?? 'noSystem'));
  const years = periods[at] ?? document.rain.designReturnPeriod;
  const member = memberOf(family, chosen, years);
  const words = levelWords(member, sillLevel);
  const draw = (size: { width: number; height: number }) => plainSection(section(document, null, {
    ...size, gravity: false, utilities: false, scaleUnit: units === 'us' ? 'foot' : 'metre', water: { pond: member?.maxLevel ?? null, basin: null },
  }), document, t);
  return (
    <section className="stack" aria-labelledby="water">
      <Heading id="water">{t('portal.water')}</Heading>
      <p>{t('portal.water.lead')}</p>
      <Drawing title={t('portal.picture')} height={(width) => Math.min(440, Math.max(300, width * 0.42))} display={draw}
        table={<StormTable family={family} sillLevel={sillLevel} />}>
        <p className={member && member.minutesOverSill > 0 ? 'drain-level drain-over' : 'drain-level'} role="status">{t(words.code, words.params)}</p>
      </Drawing>
      {periods.length > 1 ? (
        <div className="stack drain-storm">
          <Slider label={t('portal.storm')} min={0} max={periods.length - 1} value={at} onChange={setAt} margins={ends} text={t('portal.storm.years', { years })} />
          <div className="drain-ticks figure" aria-hidden="true">
            {periods.map((period, index) => <span key={period} style={{ left: `calc(${ends.left}px + (100% - ${ends.left + ends.right}px) * ${index / (periods.length - 1)})` }}>{t('portal.storm.short', { years: period })}</span>)}
          </div>
          <p className="faint">{t('portal.storm.years', { years })}</p>
        </div>
      ) : null}
      {known.length > 1 ? <Choices label={t('portal.case')} value={chosen} onChange={setChosen} choices={known.map((value) => ({ value, label: t(`portal.case.${value}`) }))} /> : null}
      <div>
        <h3>{t('portal.words')}</h3>
        <ul className="drain-words">{wordsOfKinds(document).map((code) => <li key={code}>{t(code)}</li>)}</ul>
      </div>
    </section>
  );
}
