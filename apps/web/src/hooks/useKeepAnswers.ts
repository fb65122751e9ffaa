import { useMutation } from '@tanstack/react-query';
import { v7 as uuidv7 } from 'uuid';
import { keepAnswers, type JobAnswer } from '../lib/outbox.ts';
import { useMe } from './useMe.ts';

/** Keeps what one press answers on this phone first, whatever the signal does; it is sent from there once. */
export function useKeepAnswers(jobId: string, onDone: () => void) {
  const memberId = useMe().me?.id ?? '';
  const mutation = useMutation<void, Error, readonly JobAnswer[]>({
    networkMode: 'always',
    mutationFn: (answers) => keepAnswers(answers.map((answer) => ({ id: uuidv7(), memberId, jobId, answer }))),
    onSuccess: onDone,
  });
  return { keep: mutation.mutate, busy: mutation.isPending, problem: mutation.error };
}
