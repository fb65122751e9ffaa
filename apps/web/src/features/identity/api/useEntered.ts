import { identity, type Me } from '@yardfall/contracts';
import { useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { ownedBy } from '../../../lib/answers.ts';
import { takeUpAgain } from '../../../lib/outbox.ts';
import { read } from '../../../lib/query.ts';

/** After signing in: forget what the page knew of anybody before, and go on. */
export function useEntered(): (me: Me, from?: string) => void {
  const queries = useQueryClient();
  const navigate = useNavigate();
  const enter = async (me: Me, from: string | undefined) => {
    // The page asked who is there before anybody was: that answer may come after this one, and would say that nobody is, or somebody else.
    await queries.cancelQueries({ queryKey: read(identity.me).queryKey });
    queries.removeQueries({ predicate: ({ queryKey }) => queryKey[0] !== identity.me.id });
    queries.setQueryData(read(identity.me).queryKey, { data: me, etag: null });
    // A browser that keeps nothing (private mode) is entered all the same.
    void ownedBy(me).catch(() => undefined);
    void takeUpAgain(me.id).catch(() => undefined);
    const home = me.kind === 'customer' ? '/drain' : '/';
    // Only a path of this page is followed, never an address of another.
    await navigate({ to: from !== undefined && /^\/(?!\/)/.test(from) ? from : home, replace: true });
  };
  return (me, from) => void enter(me, from);
}
