import type { NewJob } from '@yardfall/contracts';
import { inch } from './readings.ts';

const place = { state: 'NC', timeZone: 'America/New_York' };
const hour = 3600;

/** What four invented homeowners said on the telephone. */
export const ternHollowCall: NewJob = {
  title: 'Tern Hollow',
  customer: { name: 'Marisol and Dwight Pruett', email: 'pruett@demo.example', phones: ['555-0118'], language: 'en' },
  property: { ...place, address: '118 Tern Hollow Ln, Sabine Flats', gateCode: '1180', notes: 'Gate on the east side, 38 in wide.' },
  complaint: {
    words: 'When it pours, the patio fills up and it comes in under the slider. Three times last year. The drain in the patio does nothing.',
    depth: 3 * inch, startsAfter: 20 * 60, staysFor: 12 * hour, door: 'Patio slider', enteredHouse: true, onDryDays: false, timesPerYear: 3, tried: 'A plumber ran a snake through the patio drain.', rainDate: null,
  },
};

export const ridgebackCall: NewJob = {
  title: 'Ridgeback',
  customer: { name: 'Owen Tabb', email: 'tabb@demo.example', phones: ['555-0109'], language: 'en' },
  property: { ...place, address: '9 Ridgeback Ct, Sabine Flats', gateCode: '', notes: '' },
  complaint: {
    words: 'The drive runs down to the garage and the water comes under the door. I want a pump.',
    depth: 2 * inch, startsAfter: 10 * 60, staysFor: 2 * hour, door: 'Garage door', enteredHouse: true, onDryDays: false, timesPerYear: 5, tried: 'Sandbags.', rainDate: null,
  },
};

export const sallowBendCall: NewJob = {
  title: 'Sallow Bend',
  customer: { name: 'Priya Venn', email: 'venn@demo.example', phones: ['555-0177'], language: 'en' },
  property: { ...place, address: '77 Sallow Bend, Sabine Flats', gateCode: '', notes: 'Do not park on the terrace.' },
  complaint: {
    words: 'It never dries out behind the wall, even when it has not rained, and the patio has cracked.',
    depth: null, startsAfter: null, staysFor: null, door: 'Terrace door', enteredHouse: false, onDryDays: true, timesPerYear: null, tried: '', rainDate: null,
  },
};

export const wickerRoadCall: NewJob = {
  title: 'Wicker Road',
  customer: { name: 'Asta Lindqvist', email: 'lindqvist@demo.example', phones: ['555-0140'], language: 'en' },
  property: { ...place, address: '40 Wicker Rd, Sabine Flats', gateCode: '4077', notes: 'Two dogs; ring before you open the gate.' },
  complaint: {
    words: 'The water comes in along the slab at the back, and somebody wants to sell me a drain and a pump for it.',
    depth: 0.5 * inch, startsAfter: 10 * 60, staysFor: 3 * hour, door: 'Back wall', enteredHouse: true, onDryDays: false, timesPerYear: 4, tried: 'Plastic edging along the bed.', rainDate: null,
  },
};
