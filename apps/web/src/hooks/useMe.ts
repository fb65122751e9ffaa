import { identity, may, type Me, type Permission } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../lib/query.ts';

export interface Signed {
  readonly me: Me | null;
  readonly pending: boolean;
  readonly may: (permission: Permission) => boolean;
}

/** Who is signed in, and what the one role table lets them do. */
export function useMe(): Signed {
  const { data, isPending } = useQuery({ ...read(identity.me), retry: false, staleTime: 60_000 });
  const me = data?.data ?? null;
  return { me, pending: isPending, may: (permission) => me !== null && may(me.roles, permission) };
}
