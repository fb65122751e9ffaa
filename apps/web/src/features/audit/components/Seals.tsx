import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useVerify } from '../api/audit.ts';

/** Each entry is sealed to the one before it; the service can recompute the whole chain. */
export function Seals() {
  const { t } = useText();
  const [asked, setAsked] = useState(false);
  const { data, error, isFetching, refetch } = useVerify(asked);
  const check = () => {
    if (asked) void refetch();
    else setAsked(true);
  };
  const state = data?.data;
  return (
    <div className="stack" aria-live="polite">
      <div className="row"><Button busy={isFetching} onClick={check}>{t('audit.verify')}</Button></div>
      {isFetching ? <Loading what={t('audit.verifying')} /> : null}
      <ProblemNotice problem={error} />
      {state === undefined ? null : state.broken > 0
        ? <Notice severity="stop"><p>{t('audit.broken', { broken: state.broken })}</p></Notice>
        : <Notice><p>{t('audit.sound', { sealed: state.sealed, unsealed: state.unsealed })}</p></Notice>}
    </div>
  );
}
