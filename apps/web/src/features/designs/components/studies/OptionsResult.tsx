import type { OptionPoint } from '@yardfall/calc';
import type { ResponseOf, studies as api } from '@yardfall/contracts';
import { frontGraph } from '@yardfall/drawing';
import { isMessageCode } from '@yardfall/text';
import { useState } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { Drawing } from '../../../../components/Drawing.tsx';
import { ProblemNotice } from '../../../../components/Notice.tsx';
import { Table } from '../../../../components/Table.tsx';
import { useMe } from '../../../../hooks/useMe.ts';
import { useText } from '../../../../lib/reader.tsx';
import { useOpenVariant } from '../../api/studies.ts';
import { nameOf } from '../../model/editWords.ts';
import { documentOfPoint, ordered, picksOf, threeMarks, type OptionsAsked, type OptionsOutcome } from '../../model/front.ts';

interface OptionsResultProps {
  readonly detail: ResponseOf<typeof api.read>;
  readonly onVariant: (revisionId: string) => void;
}

/** Designs that no other makes pointless: one line of price against protection with three marks on it, and any of them to open. */
export function OptionsResult({ detail, onVariant }: OptionsResultProps) {
  const { t, q, say, units } = useText();
  const outcome = detail.result as unknown as OptionsOutcome;
  const asked = detail.request as unknown as OptionsAsked;
  const points = ordered(outcome.front);
  const marks = threeMarks(points);
  const [selected, setSelected] = useState<number>(marks[0] ?? 0);
  const point = points[selected] ?? null;
  const { kind, unpriced } = outcome.cost;
  const cost = (value: number) => (kind === 'money' ? q('money', value) : t('studies.options.step', { step: value }));
  const protection = (one: OptionPoint) => one.protectedStorm === null ? t('studies.options.keepsNothing') : t(one.wholeTable ? 'studies.options.keepsAll' : 'studies.options.keeps', { years: one.protectedStorm });
  const nameOfPoint = (at: number) => t('studies.options.point', { n: at + 1, cost: cost(points[at]?.cost ?? 0) });
  const shown = points.map((one, at) => ({ id: String(at), cost: one.cost, lower: one.lower, passes: one.passes, mark: marks.includes(at) ? marks.indexOf(at) + 1 : null }));
  if (point === null) return <p>{t('studies.options.nonePasses')}</p>;
  return (
    <div className="stack">
      {kind === 'order' ? <p className="measure">{t('studies.options.orderWhy', { codes: unpriced.map((code) => (isMessageCode(`prices.item.${code}`) ? say(`prices.item.${code}`) : code)).join(', ') })}</p> : <p className="faint measure">{t('studies.options.moneyWhy')}</p>}
      <Drawing title={t('studies.options.picture')} height={(width) => Math.min(420, Math.max(300, width * 0.4))} selected={String(selected)} onSelect={(id) => setSelected(Number(id))} partName={(id) => nameOfPoint(Number(id))}
        display={(size) => frontGraph(shown, { ...size, cost: kind, heightUnit: units === 'us' ? 0.0254 : 0.01 })} />
      <Table stacks="labelled" caption={t('studies.options.table')}
        columns={[{ key: 'point', head: t('studies.options.design') }, { key: 'cost', head: t('studies.options.cost'), figure: true }, { key: 'lower', head: t('studies.options.lower'), figure: true }, { key: 'keeps', head: t('studies.options.protection') }]}
        rows={points.map((one, at) => ({
          key: String(at), strong: at === selected,
          cells: {
            point: <button type="button" className="revision-open" aria-pressed={at === selected} onClick={() => setSelected(at)}>{marks.includes(at) ? t(`studies.options.mark.${marks.length === 2 && at === marks[1] ? 3 : ((marks.indexOf(at) + 1) as 1 | 2 | 3)}`, { n: at + 1 }) : t('studies.options.between', { n: at + 1 })}</button>,
            cost: cost(one.cost), lower: one.lower < 0 ? t('studies.band.comesIn') : q('height', one.lower), keeps: protection(one),
          },
        }))} />
      <Chosen key={selected} point={point} n={selected + 1} outcome={outcome} asked={asked} jobId={detail.jobId} onVariant={onVariant} />
      {outcome.front.complete ? <p className="faint">{t('studies.options.all', { count: outcome.front.combinations })}</p> : null}
    </div>
  );
}

interface ChosenProps {
  readonly point: OptionPoint;
  readonly n: number;
  readonly outcome: OptionsOutcome;
  readonly asked: OptionsAsked;
  readonly jobId: string;
  readonly onVariant: (revisionId: string) => void;
}

/** What the chosen point is built of, why the next cheaper one is not enough, and the way into the design. */
function Chosen({ point, n, outcome, asked, jobId, onVariant }: ChosenProps) {
  const { t, say } = useText();
  const { may } = useMe();
  const open = useOpenVariant();
  const why = point.whyNotCheaper;
  const whyParams = { shortBy: why?.shortBy ?? 0, returnPeriod: why?.returnPeriod ?? 0, check: why?.check ?? '' };
  const start = () => open.write({ params: { jobId }, body: { name: t('studies.options.variant', { n }), document: documentOfPoint(asked, outcome, point, new Date()) as never, fromRevisionId: null } }, { onSuccess: ({ data }) => onVariant(data.id) });
  return (
    <section className="stack study-chosen" aria-label={t('studies.options.chosen', { n })}>
      <ul>
        {picksOf(outcome.choices, point).map(({ choice, name, isDrawn }) => {
          const part = nameOf([asked.document], choice.id.split(':')[0] ?? choice.id);
          return <li key={choice.id}>{choice.kind === 'diversion' ? t(point.picks[choice.id] === 'yes' ? 'studies.options.led' : 'studies.options.falls', { name: part }) : isDrawn ? t('studies.options.asDrawn', { part }) : t('studies.options.picked', { part, name })}</li>;
        })}
      </ul>
      <p>{why === null ? t('decisions.cheaper.none') : say(`decisions.cheaper.${why.code}`, whyParams)}</p>
      {point.passes ? null : <p className="comes-in">{t('studies.options.failsCheck')}</p>}
      <ProblemNotice problem={open.problem} />
      {may('designs.edit') ? <div className="row"><Button busy={open.busy} onClick={start}>{t('studies.options.open')}</Button></div> : null}
    </section>
  );
}
