import { expect, type Page } from '@playwright/test';

const needed = ['jobs.read', 'checklists.read', 'designs.read', 'surveyFacts.list', 'permits.read'];

/** The worker holds the whole app, and the phone has what the day needs. */
export async function readyForTheYard(page: Page, jobId: string, wanted: readonly string[] = needed): Promise<void> {
  await page.evaluate(async () => { await navigator.serviceWorker.ready; });
  await expect.poll(() => page.evaluate(([id, names]) => new Promise<boolean>((resolve, reject) => {
    const open = indexedDB.open('yardfall');
    open.onerror = () => reject(open.error ?? new Error('no store'));
    open.onsuccess = () => {
      const keys = open.result.transaction('answers').objectStore('answers').getAllKeys();
      keys.onsuccess = () => {
        open.result.close();
        resolve(names.every((what) => keys.result.some((key) => typeof key === 'string' && key.includes(what) && key.includes(id))));
      };
    };
  }), [jobId, wanted] as const), { timeout: 60_000 }).toBe(true);
}
