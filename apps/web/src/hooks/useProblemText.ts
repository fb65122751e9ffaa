import { isMessageCode } from '@yardfall/text';
import { ApiProblem } from '../lib/problem.ts';
import { useText } from '../lib/reader.tsx';

/** What happened, what was kept and what to do, in the reader's language. */
export function useProblemText(): (error: unknown) => string {
  const { t, say } = useText();
  return (error) => {
    if (!(error instanceof ApiProblem)) return t('errors.unreadableAnswer');
    const code = `errors.${error.code}`;
    const sentence = isMessageCode(code) ? t(code, { requestId: error.requestId, ...error.params }) : t('errors.unreadableAnswer');
    // A refused document says what is wrong in it by a code of its own.
    const { reason } = error.params;
    return typeof reason === 'string' ? `${sentence} ${say(reason, error.params)}` : sentence;
  };
}
