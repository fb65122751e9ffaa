import type { Survey } from '@yardfall/contracts';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { fallSentence } from '../model/fallSentence.ts';
import { pointNamed } from '../model/content.ts';

const marks = { closes: 'note', caution: 'caution', open: 'stop', notClosed: 'caution' } as const;

/** What the calc package made of the book: levels, closing, gravity, the pond and the old drain. */
export function Reduction({ survey }: { readonly survey: Survey }) {
  const { t, q, say } = useText();
  const { reduction, content } = survey;
  return (
    <div className="stack">
      <GravityAnswer survey={survey} />
      <div className="row"><FindingMark severity={marks[reduction.verdict]} wordUnseen /><span>{t(`surveys.verdict.${reduction.verdict}`, { misclosure: Math.abs(reduction.misclosure ?? 0), allowable: reduction.allowable })}</span></div>
      {reduction.sumCheck ? <p className="faint">{t(reduction.sumCheck.agrees ? 'surveys.sumAgrees' : 'surveys.sumDiffers', { difference: reduction.sumCheck.difference })}</p> : null}
      {reduction.problems.map((problem, at) => <Notice key={at} severity="caution"><p>{say(problem.code, problem.params)}</p></Notice>)}
      <Table stacks="labelled" caption={t('surveys.points')}
        columns={[{ key: 'point', head: t('surveys.point') }, { key: 'role', head: t('surveys.role') }, { key: 'hi', head: t('surveys.hi'), figure: true }, { key: 'level', head: t('surveys.level'), figure: true }]}
        rows={reduction.points.map((point) => ({
          key: `${point.readingId}-${point.point}`,
          cells: { point: point.point, role: t(`surveys.role.${pointNamed(content, point.point).role}`), hi: point.instrumentHeight === null ? '' : q('level', point.instrumentHeight), level: q('levelAndTape', point.adjusted) },
        }))} />
      {reduction.volumeToSill === null ? null : <p>{t('surveys.volumeToSill', { volume: reduction.volumeToSill })}</p>}
      {reduction.drainTests.map((test) => {
        const asked = content.drainTests.find((entry) => entry.id === test.id);
        if (!asked) return null;
        if (test.volume === null || test.blindLength === null) return <p key={test.id}>{t('surveys.drainRuns', { name: asked.name })}</p>;
        return <p key={test.id}>{t('surveys.blindPipe', { name: asked.name, volume: test.volume, length: test.blindLength })}</p>;
      })}
    </div>
  );
}

/** "Gravity is short by 1.0 ft" to the best outlet, then every outlet without and with the height in hand. */
function GravityAnswer({ survey: { reduction } }: { readonly survey: Survey }) {
  const { t } = useText();
  if (reduction.gravity.length === 0) return null;
  const best = reduction.gravity.reduce((a, b) => (b.shortfallWithMargin < a.shortfallWithMargin ? b : a));
  const words = (short: number) => t(short > 0 ? 'surveys.shortBy' : 'surveys.toSpare', { height: Math.abs(short) });
  return (
    <div className="stack">
      <p className="gravity-answer">{fallSentence(t, { name: best.outlet, margin: -best.shortfall, uncertainty: best.uncertainty, verdict: best.verdict })}</p>
      <Table stacks="labelled" caption={t('surveys.gravity')} columns={[{ key: 'outlet', head: t('surveys.outlet') }, { key: 'plain', head: t('surveys.withoutMargin'), figure: true }, { key: 'margin', head: t('surveys.withMargin'), figure: true }]}
        rows={reduction.gravity.map((answer) => ({ key: answer.outlet, cells: { outlet: answer.outlet, plain: words(answer.shortfall), margin: words(answer.shortfallWithMargin) } }))} />
    </div>
  );
}
