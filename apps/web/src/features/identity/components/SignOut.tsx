import { identity } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { forgetAnswers } from '../../../lib/answers.ts';
import { useWrite } from '../../../hooks/useWrite.ts';
import { useText } from '../../../lib/reader.tsx';

export function SignOut() {
  const { t } = useText();
  // The page is loaded anew, so that nothing of this person stays in its memory.
  const { write, busy, problem } = useWrite(identity.signOut, { onDone: () => void forgetAnswers().finally(() => location.assign('/sign-in')) });
  return (
    <>
      <Button kind="text" busy={busy} onClick={() => write({})}>{t('ui.signOut')}</Button>
      <ProblemNotice problem={problem} />
    </>
  );
}
