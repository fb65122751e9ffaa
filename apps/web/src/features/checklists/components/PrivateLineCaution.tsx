import { privateLineSteps, privateLineWarnings } from '@yardfall/contracts';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { usePrivateLines } from '../../../hooks/usePrivateLines.ts';
import { useText } from '../../../lib/reader.tsx';
import { factsOf } from '../model/evidence.ts';
import { linesNow } from '../model/ownLines.ts';
import type { ChecklistView } from '../model/view.ts';

interface PrivateLineCautionProps {
  readonly list: ChecklistView;
  readonly template: string;
}

/** Before anything is cut or dug: the homeowner's own lines in one line, each of them a tap away. Where they are asked, the form itself says it. */
export function PrivateLineCaution({ list, template }: PrivateLineCautionProps) {
  return privateLineSteps.has(template) && template !== 'A3' ? <Warnings list={list} /> : null;
}

function Warnings({ list }: Pick<PrivateLineCautionProps, 'list'>) {
  const { t } = useText();
  const known = usePrivateLines(list.jobId);
  const told = list.items.filter(({ item }) => item.template === 'A3').flatMap((view) => factsOf(view, 'written'));
  const lines = linesNow(known, told);
  const warnings = privateLineWarnings(lines);
  if (warnings.length === 0) return null;
  const unknown = warnings.filter(({ why }) => why === 'unknown').length;
  return (
    <details className="fold caution-line">
      <summary><FindingMark severity="caution" wordUnseen /><span>{unknown === 0 ? t('checklists.private.briefThere', { there: warnings.length }) : t('checklists.private.brief', { there: warnings.length - unknown, unknown })}</span></summary>
      <ul className="private-lines">
        {warnings.map(({ kind, why }) => {
          const note = lines.find(({ question }) => question === kind)?.note ?? '';
          return <li key={kind}>{t('checklists.private.line', { line: `checklists.private.${kind}`, why: `checklists.private.why.${why}` })}{note === '' ? null : <span className="faint"> {t('checklists.private.note', { note })}</span>}</li>;
        })}
      </ul>
    </details>
  );
}
