import { isMessageCode } from '@yardfall/text';
import { ApiProblem } from '../lib/problem.ts';
import { useText } from '../lib/reader.tsx';

/** What happened, what was kept and what to do, in the reader's language. */
export function useProblemText(): (error: unknown) => string {
  const { t } = useText();
  return (error) => {
    if (!(error instanceof ApiProblem)) return t('errors.unreadableAnswer');
    const code = `errors.${error.code}`;
    return isMessageCode(code) ? t(code, { requestId: error.requestId, ...error.params }) : t('errors.unreadableAnswer');
  };
}
