import type { BodyInput, Job, jobs, Me } from '@yardfall/contracts';

export type JobInput = BodyInput<typeof jobs.create>;
export type ComplaintInput = JobInput['complaint'];
export type CustomerDraft = JobInput['customer'];
export type PropertyDraft = JobInput['property'];

/** State, zone and the customer's language as they are for most jobs of this company, whoever is at the phone. */
export function emptyJob({ language, state, timeZone }: Pick<Me['company'], 'language' | 'state' | 'timeZone'>): JobInput {
  return {
    title: '',
    customer: { name: '', email: null, phones: [], language },
    property: { address: '', state, timeZone, gateCode: '', notes: '' },
    complaint: {
      words: '', depth: null, startsAfter: null, staysFor: null, door: '', enteredHouse: false, onDryDays: false, timesPerYear: null, tried: '', rainDate: null,
    },
  };
}

/** What can be corrected of a job that exists: the ids of customer and property stay where they are. */
export function inputOf(job: Job): JobInput {
  const { id: _customer, ...customer } = job.customer;
  const { id: _property, ...property } = job.property;
  return { title: job.title, customer, property, complaint: job.complaint };
}

/** Phones as one text, a phone a line or between commas. */
export function phonesOf(text: string): string[] {
  return text.split(/[\n,;]/).map((phone) => phone.trim()).filter((phone) => phone.length >= 3).slice(0, 4);
}
