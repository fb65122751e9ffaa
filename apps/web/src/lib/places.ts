/** The zone in which most of a state lives. A property near a zone line is corrected by hand. From memory. */
const zones: Readonly<Record<string, readonly string[]>> = {
  'America/New_York': ['CT', 'DC', 'DE', 'FL', 'GA', 'IN', 'KY', 'MA', 'MD', 'ME', 'MI', 'NC', 'NH', 'NJ', 'NY', 'OH', 'PA', 'RI', 'SC', 'VA', 'VT', 'WV'],
  'America/Chicago': ['AL', 'AR', 'IA', 'IL', 'KS', 'LA', 'MN', 'MO', 'MS', 'ND', 'NE', 'OK', 'SD', 'TN', 'TX', 'WI'],
  'America/Denver': ['CO', 'ID', 'MT', 'NM', 'UT', 'WY'],
  'America/Phoenix': ['AZ'],
  'America/Los_Angeles': ['CA', 'NV', 'OR', 'WA'],
  'America/Anchorage': ['AK'],
  'Pacific/Honolulu': ['HI'],
};

export interface Place {
  readonly state: string;
  readonly timeZone: string;
}

export const timeZones = Object.keys(zones);
export const states = Object.values(zones).flat().sort();

export function zoneOf(state: string): string {
  return timeZones.find((zone) => zones[zone]?.includes(state)) ?? 'America/New_York';
}

/** The reader's own zone, and a state that lies in it. */
export function defaultPlace(): Place {
  const own = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const timeZone = timeZones.includes(own) ? own : 'America/New_York';
  return { state: timeZone === 'America/New_York' ? 'FL' : (zones[timeZone]?.[0] ?? 'FL'), timeZone };
}
