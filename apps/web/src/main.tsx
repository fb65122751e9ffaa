import './early.ts';
import '@fontsource/atkinson-hyperlegible-next/400.css';
import '@fontsource/atkinson-hyperlegible-next/400-italic.css';
import '@fontsource/atkinson-hyperlegible-next/600.css';
import '@fontsource/atkinson-hyperlegible-next/700.css';
import '@fontsource/atkinson-hyperlegible-mono/400.css';
import '@fontsource/atkinson-hyperlegible-mono/700.css';
import './app/tokens.css';
import './app/base.css';
import './app/print.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { firstKept } from './lib/firstKept.ts';
import { loadOutbox, outboxNow } from './lib/outbox.ts';
import { firstPreferences } from './lib/reader.tsx';
import { keepShell } from './lib/shell.ts';
import { learn } from './lib/words.ts';

const root = document.getElementById('root');
if (!root) throw new Error('the page has no #root');
// A customer's one page and the members' pages share little: each is fetched by itself, with its words.
const apps = {
  customer: () => import('./app/CustomerApp.tsx').then((app) => app.CustomerApp),
  send: () => import('./app/SendApp.tsx').then((app) => app.SendApp),
  crew: async () => {
    const outbox = loadOutbox().catch(() => undefined); // whoever needs it asks again, and says so
    const [app, kept] = await Promise.all([import('./app/App.tsx'), firstKept()]);
    await app.ready(kept, outbox);
    return app.App;
  },
};
const pages: Readonly<Record<string, keyof typeof apps>> = { '/drain': 'customer', '/send': 'send' };
const who = pages[location.pathname] ?? 'crew';
// No await at the top: what is fetched here imports from this very file, and would wait for its end.
void Promise.all([apps[who](), learn(firstPreferences().language, who)]).then(([App]) => createRoot(root).render(<StrictMode><App /></StrictMode>));

if (who === 'crew') {
  const isOutboxEmpty = async () => {
    await loadOutbox();
    return outboxNow().length === 0;
  };
  keepShell(isOutboxEmpty).catch(() => undefined); // without it the app works as long as there is a network
}
