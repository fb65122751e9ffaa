import './lib/zodWithoutEval.ts';
import { askFirstQuestions } from './lib/early.ts';
import { readKept } from './lib/firstKept.ts';

/** Pages of a customer and of a photo link are apps of their own. */
if (location.pathname !== '/drain' && location.pathname !== '/send') {
  const isHome = location.pathname === '/';
  askFirstQuestions(isHome);
  readKept(isHome);
  // The first clock of a page takes a phone a tenth of a second: it is made while the other scripts are on their way.
  if (isHome) new Intl.DateTimeFormat('en-US', { timeZone: 'America/New_York' }).format();
}
