import { createRootRoute, createRoute, createRouter, lazyRouteComponent } from '@tanstack/react-router';
import { Broken } from '../components/ErrorBoundary.tsx';
import { Gate } from './shell/Gate.tsx';
import { Missing } from './pages/Missing.tsx';
import { Shell } from './shell/Shell.tsx';

/** Who is signed in never needs these. */
const entrance = (name: 'SignInPage' | 'JoinPage' | 'SetUpPage') => lazyRouteComponent(() => import('./pages/entrance.tsx'), name);

const root = createRootRoute({
  component: Shell,
  notFoundComponent: Missing,
  errorComponent: ({ reset }) => <Broken onRetry={reset} />,
});

const signIn = createRoute({
  getParentRoute: () => root,
  path: '/sign-in',
  validateSearch: (search: Record<string, unknown>): { from?: string } => (typeof search.from === 'string' ? { from: search.from } : {}),
  component: entrance('SignInPage'),
});
// The token of a link stands behind `#`, so that no server, proxy or referrer sees it.
const join = createRoute({ getParentRoute: () => root, path: '/join', component: entrance('JoinPage') });
const setUp = createRoute({ getParentRoute: () => root, path: '/set-up', component: entrance('SetUpPage') });

/** Everything behind it needs somebody signed in; each page asks for its own permission by what it reads. */
const member = createRoute({ getParentRoute: () => root, id: 'member', component: Gate });

const home = createRoute({ getParentRoute: () => member, path: '/', component: lazyRouteComponent(() => import('./pages/HomePage.tsx'), 'HomePage') });
const newJob = createRoute({ getParentRoute: () => member, path: '/jobs/new', component: lazyRouteComponent(() => import('./pages/NewJobPage.tsx'), 'NewJobPage') });
const allJobs = createRoute({ getParentRoute: () => member, path: '/jobs', component: lazyRouteComponent(() => import('./pages/JobsPage.tsx'), 'JobsPage') });
const job = createRoute({ getParentRoute: () => member, path: '/jobs/$jobId', component: lazyRouteComponent(() => import('./pages/JobPage.tsx'), 'JobPage') });
const yard = createRoute({ getParentRoute: () => member, path: '/jobs/$jobId/yard', component: lazyRouteComponent(() => import('./pages/YardPage.tsx'), 'YardPage') });
const list = createRoute({ getParentRoute: () => member, path: '/jobs/$jobId/list', component: lazyRouteComponent(() => import('./pages/WorkListPage.tsx'), 'WorkListPage') });
const company = createRoute({ getParentRoute: () => member, path: '/company', component: lazyRouteComponent(() => import('./pages/CompanyPage.tsx'), 'CompanyPage') });
const waits = createRoute({ getParentRoute: () => member, path: '/waits', component: lazyRouteComponent(() => import('./pages/WaitsPage.tsx'), 'WaitsPage') });

export const router = createRouter({
  routeTree: root.addChildren([signIn, join, setUp, member.addChildren([home, allJobs, newJob, job, yard, list, company, waits])]),
  defaultPreload: 'intent',
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}
