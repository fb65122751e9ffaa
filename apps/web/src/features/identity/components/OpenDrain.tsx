import { identity, type Me } from '@yardfall/contracts';
import { useEffect, useRef } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { ApiProblem } from '../../../lib/problem.ts';
import { useText } from '../../../lib/reader.tsx';

interface OpenDrainProps {
  readonly token: string;
  readonly onEntered: (me: Me) => void;
}

/** The customer's link: exchanged for a session once, then the address is clean. */
export function OpenDrain({ token, onEntered }: OpenDrainProps) {
  const { t } = useText();
  const { write, problem } = useWrite(identity.openCustomerLink, { onDone: onEntered });
  const asked = useRef(false);
  useEffect(() => {
    if (asked.current) return;
    asked.current = true;
    write({ body: { token } });
  }, [token, write]);
  if (!problem) return <Loading what={t('identity.yourPage')} />;
  const again = problem instanceof ApiProblem && problem.passing;
  return <ProblemNotice problem={problem} action={again ? <Button onClick={() => write({ body: { token } })}>{t('ui.tryAgain')}</Button> : undefined} />;
}
