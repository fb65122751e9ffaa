import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useChecklist } from '../api/checklists.ts';
import { writtenAs } from '../model/judge.ts';
import { printedList, type PrintedFigure, type PrintedLine, type PrintedStep } from '../model/printed.ts';
import { Limits } from './Verdict.tsx';
import './printed.css';

/** The whole list of the job on paper, with a box for each step and a line for what is read. */
export function PrintedList({ jobId, released }: { readonly jobId: string; readonly released: boolean }) {
  const { t, say } = useText();
  const { data, error, isPending } = useChecklist(jobId, released);
  if (!released) return <Empty what={t('checklists.none')} why={t('checklists.noneWhy')} />;
  if (isPending) return <Loading what={t('checklists.loading')} />;
  if (!data) return <ProblemNotice problem={error} />;
  const groups = printedList(data.data.items, say);
  return (
    <div className="stack-wide printed-list">
      <div className="row"><span className="no-print"><Button kind="main" onClick={() => print()}>{t('checklists.print')}</Button></span><p className="faint">{t('checklists.steps', { n: data.data.items.length })}</p></div>
      {groups.map(({ heading, lines }) => (
        <section key={heading}>
          <Heading level={2}>{heading}</Heading>
          <ol className="printed-lines">{lines.map((line) => <Line key={line.steps[0]?.key} line={line} />)}</ol>
        </section>
      ))}
    </div>
  );
}

function Line({ line }: { readonly line: PrintedLine }) {
  const { t } = useText();
  const [only] = line.steps;
  const alone = line.steps.length === 1 && only !== undefined ? only : null;
  return (
    <li className="printed-line">
      <span className={alone === null ? undefined : 'printed-box'} aria-hidden="true" />
      <div>
        <p><strong>{line.what}</strong>{alone === null || alone.part === null ? null : <span className="faint"> {t('checklists.ofPart', { part: alone.part })}</span>}</p>
        <p>{t('checklists.printed.good', { good: line.good })}</p>
        {line.photo === null ? null : <p>{t('checklists.printed.photo', { photo: line.photo })}</p>}
        {line.after.length === 0 ? null : <p>{t('checklists.held', { holdPoints: line.after.join(', ') })}</p>}
        <p className="faint">{t('checklists.printed.signs', { signers: line.signers.join(', ') })}</p>
        {alone === null ? <ul className="printed-parts">{line.steps.map((step) => <Part key={step.key} step={step} />)}</ul> : <Blanks step={alone} />}
      </div>
    </li>
  );
}

/** One of several steps that are worded alike. */
function Part({ step }: { readonly step: PrintedStep }) {
  return (
    <li className="printed-part">
      <span className="printed-box" aria-hidden="true" />
      <div><p>{step.part}</p><Blanks step={step} /></div>
    </li>
  );
}

/** A line for what is read, with what it has to be. */
function Blanks({ step: { figures } }: { readonly step: PrintedStep }) {
  if (figures.length === 0) return null;
  return (
    <ul className="printed-blanks">
      {figures.map((figure) => <li key={figure.measure.name}>{figure.label}<span className="printed-blank" aria-hidden="true" /><span className="faint"><HasToBe {...figure} /></span></li>)}
    </ul>
  );
}

function HasToBe({ measure, limit }: PrintedFigure) {
  const { t, q } = useText();
  if (limit === null) return null;
  return limit === 'target' ? t('checklists.printed.designed', { level: q(writtenAs[measure.quantity], measure.target) }) : <Limits measure={measure} />;
}
