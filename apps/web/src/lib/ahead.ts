// What the first page needs of the packages, in a file of its own: it is made while the rest of the page is on its way.
import { checklists, found, identity, jobs, type Endpoint } from '@yardfall/contracts';
import { readEarly } from './api.ts';
import { onEarly, type EarlyQuestion } from './early.ts';

const endpoints: Readonly<Record<EarlyQuestion, Endpoint>> = { me: identity.me, list: jobs.list, job: jobs.read, checklist: checklists.read, found: found.list };

/** Reads what was asked ahead as it comes, while the page is not here to do so. */
export function readAnswersAhead(): void {
  onEarly(({ question, answer }) => {
    void answer.then((response) => {
      if (response !== null && !response.bodyUsed) readEarly(endpoints[question], response);
    });
  });
}
