import { may, type Permission } from '@yardfall/contracts';
import { useMemo } from 'react';
import { useSignedIn, type SignedIn } from '../lib/reader.tsx';

export interface Signed extends SignedIn {
  readonly may: (permission: Permission) => boolean;
}

/** Who is signed in, and what the one role table lets them do. */
export function useMe(): Signed {
  const signedIn = useSignedIn();
  return useMemo(() => ({ ...signedIn, may: (permission) => signedIn.me !== null && may(signedIn.me.roles, permission) }), [signedIn]);
}
