import { v7 } from 'uuid';

/** UUID version 7: in order of time, so that indexes grow at their end. */
export function newId(): string {
  return v7();
}
