import { identity } from '@yardfall/contracts';
import { useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { Button } from '../../../components/Button.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { useText } from '../../../lib/reader.tsx';

export function SignOut() {
  const { t } = useText();
  const queries = useQueryClient();
  const navigate = useNavigate();
  const { write, busy } = useWrite(identity.signOut, {
    onDone: () => {
      queries.clear();
      void navigate({ to: '/sign-in' });
    },
  });
  return <Button kind="text" busy={busy} onClick={() => write({})}>{t('ui.signOut')}</Button>;
}
