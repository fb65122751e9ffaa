import type { PumpResult } from '@yardfall/calc';
import type { ProofTest } from '@yardfall/contracts';
import { pumpGraph } from '@yardfall/drawing';
import { Drawing } from '../../../components/Drawing.tsx';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { headAt } from '../model/runs.ts';

interface ResultProps {
  readonly test: ProofTest;
  readonly timeZone: string;
  readonly name: string;
  /** The pump as the build revision computed it. */
  readonly pump: PumpResult | null;
}

const marks = { explain: 'caution', fail: 'stop', repeat: 'caution' } as const;
/** Low flow while it runs, in the order in which to look (common practice). */
const checks = ['outlet', 'line', 'valve', 'voltage', 'wear', 'wrongPump'] as const;

export function Result({ test, timeZone, name, pump }: ResultProps) {
  const { t, q } = useText();
  const { verdict } = test;
  const words = t(`proof.verdict.${verdict}`, { measured: test.meanFlow, predicted: test.predictedFlow, uncertainty: test.uncertainty });
  return (
    <article className="stack">
      <Heading level={3} aside={t('proof.by', { by: test.recordedBy, at: test.recordedAt }, { timeZone })}>{name}</Heading>
      <p className={verdict === 'pass' ? 'proof-verdict proof-pass' : 'proof-verdict'}>
        {verdict === 'pass' ? <span aria-hidden="true">{'✓'}</span> : <FindingMark severity={marks[verdict]} wordUnseen />}
        {words}
      </p>
      <p className="faint">{t('proof.figures', { uncertainty: test.uncertainty, spread: test.spread, difference: Math.abs(test.difference), level: test.meanLevel })}</p>
      {verdict === 'explain' || verdict === 'fail' ? (
        <div>
          <p>{t('proof.look')}</p>
          <ol className="proof-checks">{checks.map((check) => <li key={check}>{t(`proof.check.${check}`)}</li>)}</ol>
        </div>
      ) : null}
      {test.note === '' ? null : <p>{test.note}</p>}
      <Table stacks="labelled" caption={t('proof.runs')}
        columns={[{ key: 'n', head: t('proof.runHead') }, { key: 'upper', head: t('proof.upper'), figure: true }, { key: 'lower', head: t('proof.lower'), figure: true }, { key: 'volume', head: t('proof.volume'), figure: true }, { key: 'seconds', head: t('proof.seconds'), figure: true }, { key: 'flow', head: t('proof.flow'), figure: true }]}
        rows={test.runs.map((run, index) => ({
          key: String(index),
          cells: {
            n: run.emptyLine ? t('proof.runNotCounted', { n: index + 1 }) : t('proof.run', { n: index + 1 }),
            upper: q('level', run.upperLevel), lower: q('level', run.lowerLevel), volume: q('volume', run.volume), seconds: q('seconds', run.seconds), flow: q('fineFlow', run.volume / run.seconds),
          },
        }))} />
      <Measured test={test} pump={pump} />
    </article>
  );
}

/** The measured point on the pump graph, at the head for which the flow was predicted. */
function Measured({ test, pump }: Pick<ResultProps, 'test' | 'pump'>) {
  const { t, units } = useText();
  const head = pump === null ? null : headAt(pump.pumpCurve, test.predictedFlow);
  if (pump === null || head === null) return null;
  const measured = { flow: test.meanFlow, uncertainty: test.uncertainty * test.meanFlow, head };
  return <Drawing title={t('proof.picture')} height={(width) => Math.min(400, Math.max(280, width * 0.5))} display={(size) => pumpGraph(pump, { ...size, measured, ...(units === 'metric' ? { flowUnit: 0.001, headUnit: 1 } : {}) })} />;
}
