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
  { name: 'tern-hollow', role: 'owner', path: '/jobs/{Tern Hollow}' },
  { name: 'tern-hollow', role: 'estimator', path: '/jobs/{Tern Hollow}' },
  { name: 'tern-hollow', role: 'crew', path: '/jobs/{Tern Hollow}' },
  { name: 'wicker-road', role: 'crew', path: '/jobs/{Wicker Road}' },
  { name: 'yard', role: 'estimator', path: '/jobs/{Wicker Road}/yard' },
  { name: 'ridgeback', role: 'estimator', path: '/jobs/{Ridgeback}' },
  { name: 'sallow-bend', role: 'owner', path: '/jobs/{Sallow Bend}' },
];
