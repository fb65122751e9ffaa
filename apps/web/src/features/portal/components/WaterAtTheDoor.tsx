import type { PortalDrawing } from '@yardfall/contracts';
import { section } from '@yardfall/drawing';
import { useId, useState } from 'react';
import { Choices } from '../../../components/Choices.tsx';
import { Drawing } from '../../../components/Drawing.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { plainSection, wordsOfKinds } from '../model/plainSection.ts';
import { casesOf, levelWords, memberOf, periodsOf, type Case } from '../model/water.ts';
import { StormTable } from './StormTable.tsx';

/** The yard cut through, with the highest water of the storm and the case that the reader picks. */
export function WaterAtTheDoor({ drawing: { document, sillLevel, family } }: { readonly drawing: PortalDrawing }) {
  const { t, units } = useText();
  const id = useId();
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
          <label htmlFor={id}>{t('portal.storm')}</label>
          <p className="faint">{t('portal.storm.years', { years })}</p>
          <input id={id} type="range" min={0} max={periods.length - 1} step={1} value={at} aria-valuetext={t('portal.storm.years', { years })} onChange={(event) => setAt(Number(event.target.value))} />
          <div className="drain-ticks figure" aria-hidden="true">{periods.map((period) => <span key={period}>{t('portal.storm.short', { years: period })}</span>)}</div>
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
