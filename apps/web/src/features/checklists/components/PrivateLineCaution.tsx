import { privateLineSteps, privateLineWarnings } from '@yardfall/contracts';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { usePrivateLines } from '../../../hooks/usePrivateLines.ts';
import { useText } from '../../../lib/reader.tsx';

interface PrivateLineCautionProps {
  readonly jobId: string;
  readonly template: string;
}

/** Before anything is cut or dug: the homeowner's own lines, those that are there and those of which nobody knows. */
export function PrivateLineCaution({ jobId, template }: PrivateLineCautionProps) {
  return privateLineSteps.has(template) ? <Warnings jobId={jobId} /> : null;
}

function Warnings({ jobId }: { readonly jobId: string }) {
  const { t } = useText();
  const lines = usePrivateLines(jobId);
  const warnings = lines === undefined ? [] : privateLineWarnings(lines);
  if (warnings.length === 0) return null;
  return (
    <details className="fold caution-line">
      <summary><FindingMark severity="caution" wordUnseen /><span>{t('checklists.private')} <span className="more">{t('checklists.private.count', { n: warnings.length })}</span></span></summary>
      <ul className="private-lines">
        {warnings.map(({ kind, why }) => {
          const note = lines?.find(({ question }) => question === kind)?.note ?? '';
          return <li key={kind}>{t('checklists.private.line', { line: `checklists.private.${kind}`, why: `checklists.private.why.${why}` })}{note === '' ? null : <span className="faint"> {t('checklists.private.note', { note })}</span>}</li>;
        })}
      </ul>
    </details>
  );
}
