import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useChecklist } from '../api/checklists.ts';
import { printedList, type PrintedLine } from '../model/printed.ts';
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
      <div className="row no-print"><Button kind="main" onClick={() => print()}>{t('checklists.print')}</Button><p className="faint">{t('checklists.steps', { n: data.data.items.length })}</p></div>
      {groups.map(({ heading, lines }) => (
        <section key={heading}>
          <Heading level={2}>{heading}</Heading>
          <ol className="printed-lines">{lines.map((line) => <Line key={line.key} line={line} />)}</ol>
        </section>
      ))}
    </div>
  );
}

function Line({ line }: { readonly line: PrintedLine }) {
  const { t } = useText();
  return (
    <li className="printed-line">
      <span className="printed-box" aria-hidden="true" />
      <div>
        <p><strong>{line.what}</strong>{line.part === null ? null : <span className="faint"> {t('checklists.ofPart', { part: line.part })}</span>}</p>
        <p>{t('checklists.printed.good', { good: line.good })}</p>
        {line.photo === null ? null : <p>{t('checklists.printed.photo', { photo: line.photo })}</p>}
        {line.after.length === 0 ? null : <p>{t('checklists.held', { holdPoints: line.after.join(', ') })}</p>}
        <p className="faint">{t('checklists.printed.signs', { signers: line.signers.join(', ') })}</p>
      </div>
    </li>
  );
}
