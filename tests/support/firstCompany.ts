import type { NewJob } from '@yardfall/contracts';
import { setUpToken } from './demo.ts';
import type { RunningService } from './processes.ts';

/** The first company and its owner, by the one-time link that an empty service offers; answers with the owner's cookie. */
export async function setUpCompany(service: RunningService): Promise<string> {
  const body = {
    token: await setUpToken(service.dataDir), companyName: 'Kill Run Yards', state: 'VA', timeZone: 'America/New_York',
    ownerName: 'Test Owner', email: 'owner@kill-run.example', password: 'a long enough password',
  };
  const response = await fetch(`${service.url}/api/v1/set-up`, { method: 'POST', headers: { 'content-type': 'application/json', origin: service.url }, body: JSON.stringify(body) });
  if (response.status !== 201) throw new Error(`the company was not made: ${response.status}`);
  return response.headers.getSetCookie().map((line) => line.split(';')[0]).join('; ');
}

export function jobCalled(title: string): NewJob {
  return {
    title,
    customer: { name: 'Written During a Kill', email: null, phones: [], language: 'en' },
    property: { address: '1 Test Row', state: 'VA', timeZone: 'America/New_York', gateCode: '', notes: '' },
    complaint: { words: 'Water at the door', depth: null, startsAfter: null, staysFor: null, door: '', enteredHouse: false, onDryDays: false, timesPerYear: null, tried: '', rainDate: null },
  };
}
