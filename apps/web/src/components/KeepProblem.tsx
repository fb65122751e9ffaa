import { ApiProblem } from '../lib/problem.ts';
import { useText } from '../lib/reader.tsx';
import { Notice, ProblemNotice } from './Notice.tsx';

/** Why something could not be kept: a sentence of the office's, or that this phone keeps nothing. */
export function KeepProblem({ problem }: { readonly problem: unknown }) {
  const { t } = useText();
  if (problem === null || problem === undefined) return null;
  if (problem instanceof ApiProblem) return <ProblemNotice problem={problem} />;
  return <Notice severity="stop"><p>{t('ui.phone.noStore')}</p></Notice>;
}
