/** What the screens are taken of. `{words}` in a path stand for the id of the demo job whose title has these words. */
export interface ScreenPage {
  readonly name: string;
  readonly role: 'owner' | 'estimator' | 'crew' | 'customer';
  readonly path: string;
}

export const pages: readonly ScreenPage[] = [
  { name: 'home', role: 'owner', path: '/' },
  { name: 'home', role: 'estimator', path: '/' },
  { name: 'home', role: 'crew', path: '/' },
  { name: 'home', role: 'customer', path: '/drain' },
  { name: 'new-job', role: 'owner', path: '/jobs/new' },
  { name: 'company', role: 'owner', path: '/company' },
  { name: 'tern-hollow', role: 'owner', path: '/jobs/{patio slider}' },
  { name: 'tern-hollow', role: 'estimator', path: '/jobs/{patio slider}' },
  { name: 'tern-hollow', role: 'crew', path: '/jobs/{patio slider}' },
  { name: 'ridgeback', role: 'estimator', path: '/jobs/{foot of the drive}' },
  { name: 'sallow-bend', role: 'owner', path: '/jobs/{leaning wall}' },
];
