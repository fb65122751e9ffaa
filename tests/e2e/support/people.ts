import { expect, type Browser, type BrowserContext, type Page } from '@playwright/test';
import { signInOf } from '../../support/demo.ts';

export type MemberKind = 'owner' | 'estimator' | 'crew';

export const phone = { width: 390, height: 844 } as const;
export const desk = { width: 1440, height: 900 } as const;

export interface Person {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What the page complained about; a noisy console fails the test. */
  readonly complaints: string[];
}

/** A browser of its own, at the size that this person works with. */
export async function openBrowser(browser: Browser, size: { readonly width: number; readonly height: number }): Promise<Person> {
  const context = await browser.newContext({ viewport: size });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    // A refused request is logged by the browser itself; the page shows it in a sentence.
    if (message.type() === 'error' && !message.text().includes('Failed to load resource')) complaints.push(message.text());
  });
  return { page, context, complaints };
}

/** Signs in by the form, as the person would. */
export async function signIn(browser: Browser, kind: MemberKind): Promise<Person> {
  const person = await openBrowser(browser, kind === 'crew' ? phone : desk);
  await signInThrough(person, '', kind);
  return person;
}

/** The same over a link of its own; an empty one is the service itself. */
export async function signInThrough({ page }: Person, url: string, kind: MemberKind): Promise<void> {
  const { email, password } = signInOf(process.env.E2E_DATA_DIR ?? '', kind);
  await page.goto(`${url}/sign-in`);
  await page.getByLabel('E-mail').fill(email ?? '');
  await page.getByLabel('Password').fill(password ?? '');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page.getByRole('heading', { level: 1 })).not.toHaveText('Sign in');
}

/** The API as this person's browser may call it, with the person's cookie. */
export async function api<T>(person: Person, method: 'GET' | 'POST' | 'PUT' | 'PATCH', path: string, body?: unknown, headers: Record<string, string> = {}): Promise<{ readonly status: number; readonly body: T }> {
  const answer = await person.context.request.fetch(`/api/v1${path}`, {
    // An answer that evaluates a design takes seconds, and more beside other tests.
    timeout: 90_000,
    method, headers: { ...(method === 'GET' ? {} : { 'idempotency-key': crypto.randomUUID() }), ...headers }, ...(body === undefined ? {} : { data: body }),
  });
  const text = await answer.text();
  return { status: answer.status(), body: (text === '' ? undefined : JSON.parse(text)) as T };
}
