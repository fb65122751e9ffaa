import type { DesignDocument } from '@yardfall/calc';
import { Notice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { openQuestions } from '../model/openQuestions.ts';

/** Says on a revision that its outlet is not settled, and what is still to be answered. */
export function Provisional({ document }: { readonly document: DesignDocument }) {
  const { t } = useText();
  const open = openQuestions(document);
  if (open.length === 0) return null;
  return (
    <Notice severity="caution" title={t('designs.provisionalTitle')}>
      <p>{t('designs.provisional')}</p>
      <ul>{open.map(({ outlet, number, question }) => <li key={`${outlet} ${String(number)}`}>{t('designs.openQuestion', { outlet, number, question: t(`designs.question.${question}`) })}</li>)}</ul>
    </Notice>
  );
}
