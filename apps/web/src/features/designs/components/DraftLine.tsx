import { Button } from '../../../components/Button.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { Saved } from '../../../components/Saved.tsx';
import { ApiProblem } from '../../../lib/problem.ts';
import { useText } from '../../../lib/reader.tsx';
import type { Draft } from '../hooks/useDraft.ts';
import type { Uncomputed } from '../../../hooks/useEvaluation.ts';
import { atEachPlace } from '../model/atEachPlace.ts';
import { editWords, placeWords, valueWords } from '../model/editWords.ts';

interface DraftLineProps {
  readonly draft: Draft;
  /** Why the document cannot be evaluated. */
  readonly problem: Uncomputed | null;
}

/** Where the edits of a draft are, and what a person has to choose about them. */
export function DraftLine({ draft, problem }: DraftLineProps) {
  const { t, say } = useText();
  return (
    <div className="stack" aria-live="polite">
      <div className="row">
        <Saved state={draft.state === 'conflict' ? 'failed' : draft.state} />
        {draft.undo ? <Button kind="text" onClick={draft.undo}>{t('designs.undo')}</Button> : null}
        {draft.redo ? <Button kind="text" onClick={draft.redo}>{t('designs.redo')}</Button> : null}
      </div>
      {problem ? <Notice severity="stop" title={t('designs.cannotEvaluate')}><p>{say(problem.code, problem.params)} {t('designs.problemAt', { path: problem.path })}</p></Notice> : null}
      {draft.aside.length > 0 ? <Aside draft={draft} /> : draft.state === 'conflict' ? <Met draft={draft} /> : null}
      {draft.state === 'failed' ? (
        <ProblemNotice problem={draft.problem} action={<div className="row"><Button onClick={draft.retry}>{t('ui.tryAgain')}</Button><Button onClick={draft.takeTheirs}>{t('designs.dropEdits')}</Button></div>} />
      ) : null}
    </div>
  );
}

/** Edits that cannot be made any more, each by name. */
function Aside({ draft }: { readonly draft: Draft }) {
  const text = useText();
  const { t } = text;
  return (
    <Notice severity="caution" title={t('designs.aside')} action={<div className="row"><Button onClick={draft.letGo}>{t('designs.letGo')}</Button></div>}>
      <p>{t('designs.asideWhy')}</p>
      <ul>{draft.aside.map((operation, at) => <li key={at}>{editWords(operation, [draft.document], text)}</li>)}</ul>
    </Notice>
  );
}

/** Edits of two people that met: what the other one left at each place, and what waits of one's own. */
function Met({ draft }: { readonly draft: Draft }) {
  const text = useText();
  const { t } = text;
  const problem = draft.problem instanceof ApiProblem ? draft.problem : null;
  const by = String(problem?.params['by'] ?? '');
  const sentence = (path: string, theirs: unknown) => {
    const keys = path.split('.');
    const place = placeWords([draft.document], keys, text);
    return theirs === null ? t('designs.conflictGone', { place, by }) : t('designs.conflictAt', { place, by, theirs: valueWords(keys.at(-1) ?? '', theirs, text) });
  };
  return (
    <Notice severity="caution" title={t('designs.conflict')} action={<div className="row"><Button onClick={draft.keepMine}>{t('designs.keepMine')}</Button><Button onClick={draft.takeTheirs}>{t('designs.takeTheirs')}</Button></div>}>
      <p>{t('designs.conflictWhy')}</p>
      <ul>{problem?.issues.map(({ path, message }) => <li key={path}>{sentence(path, JSON.parse(message) as unknown)}</li>)}</ul>
      <p>{t('designs.conflictMine')}</p>
      <ul>{atEachPlace(draft.unsent).map(({ last, count }, at) => <li key={at}>{editWords(last, [draft.document], text)} {count > 1 ? <span className="faint">{t('designs.conflictTimes', { count })}</span> : null}</li>)}</ul>
    </Notice>
  );
}
