import './lib/zodWithoutEval.ts';
import { askFirstQuestions } from './lib/early.ts';
import { readKept } from './lib/firstKept.ts';

/** Pages of a customer and of a photo link are apps of their own. */
if (location.pathname !== '/drain' && location.pathname !== '/send') {
  const isHome = location.pathname === '/';
  askFirstQuestions(isHome);
  readKept(isHome);
  makeAhead(isHome);
  // The first clock of a page takes a phone a tenth of a second: it is made while the other scripts are on their way.
  if (isHome) new Intl.DateTimeFormat('en-US', { timeZone: 'America/New_York' }).format();
}

/**
 * What comes first is made while the rest is on its way: the frame of every page, what the home needs of the packages, then the page itself.
 * The page asks for the same files again, and says so when one did not come.
 */
function makeAhead(isHome: boolean): void {
  const rules = () => import('./lib/ahead.ts').then(({ readAnswersAhead }) => readAnswersAhead());
  const parts = [() => import('react-dom/client'), rules, () => import('./app/App.tsx'), ...(isHome ? [() => import('./app/pages/HomePage.tsx')] : [])];
  for (const part of parts) part().catch(() => undefined);
}
