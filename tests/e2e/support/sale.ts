import { expect, type Page } from '@playwright/test';
import { part } from './office.ts';

/** 5. The estimator prices the issued design; a part without a price is named and gets a line. */
export async function priceIt(page: Page): Promise<void> {
  const price = await part(page, 'Price');
  await price.getByRole('button', { name: 'Price this design' }).click();
  await expect(price.getByText('Price to the customer')).toBeVisible();
  const missing = price.getByRole('button', { name: /^Add a line for/ });
  for (let left = await missing.count(); left > 0; left = await missing.count()) {
    await missing.first().click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Quantity').fill('1');
    await dialog.getByLabel('Our cost each, in dollars').fill('120');
    if (await dialog.getByLabel('Why it differs from the drawing').isVisible()) await dialog.getByLabel('Why it differs from the drawing').fill('Lump sum from the supplier.');
    await dialog.getByRole('button', { name: 'Add a line' }).click();
  }
  await price.getByLabel('Margin, percent of the price').fill('40');
  await price.getByRole('button', { name: 'Save the price' }).click();
  await expect(price.getByText(/A 40 % markup by mistake would sell it at \$/)).toBeVisible();
  await expect(price.getByText(/Margin 40 % \(markup 66\.7 %\)/)).toBeVisible();
}

/** 6. The estimator makes and sends the offer; the link is shown once. */
export async function sendOffer(page: Page): Promise<string> {
  const offer = await part(page, 'Offer');
  await offer.getByRole('button', { name: 'Make an offer' }).click();
  await offer.getByRole('button', { name: 'Send the offer' }).click();
  return offer.getByLabel('Link for the customer').inputValue();
}

/** 6. The customer reads the page and says yes by name. */
export async function acceptOffer(page: Page, link: string): Promise<void> {
  await page.goto(link);
  await expect(page.getByRole('heading', { name: 'The offer' })).toBeVisible();
  expect(page.url(), 'the address no longer holds the token').toMatch(/\/drain$/);
  await expect(page.getByText(/Your browser checked it/)).toBeVisible();
  await page.getByLabel('Type your full name').fill('Ilse Varga');
  await page.getByLabel(/I agree to sign on this page/).check();
  await page.getByRole('button', { name: 'Accept the offer' }).click();
  await expect(page.getByText(/Ilse Varga said yes/).first()).toBeVisible();
}

/** 6. The owner's release sets the build revision, once every approval is answered. */
export async function release(page: Page): Promise<void> {
  const permits = await part(page, 'Permits');
  const offer = await part(page, 'Offer');
  await expect(offer.getByRole('button', { name: /^Release/ })).toBeDisabled();
  await expect(offer.getByRole('link', { name: /^Electrical permit: not answered yet/ })).toHaveAttribute('href', '#permits');
  await permits.getByRole('button', { name: 'Several are not needed' }).click();
  const dialog = page.getByRole('dialog');
  for (const kind of await dialog.getByRole('checkbox').all()) await kind.check();
  await dialog.getByLabel('Why not, and who says so').fill('Told at the town counter.');
  await dialog.getByRole('button', { name: 'Record them as not needed' }).click();
  await expect(permits.getByText('Nothing here holds the release to dig')).toBeVisible();
  await offer.getByRole('button', { name: /^Release/ }).click();
  await expect(offer.getByText(/^Released/)).toBeVisible();
}

/** 7. A ticket of last week, and what each utility answered. Before the last answer nothing may be dug. */
export async function locate(page: Page): Promise<void> {
  const locates = await part(page, 'Locates');
  await locates.getByRole('button', { name: 'Record a ticket' }).click();
  await locates.getByLabel('Ticket number').fill(`VA-${String(Date.now())}`);
  const lastWeek = new Date(Date.now() - 7 * 86_400_000).toISOString().slice(0, 10);
  await locates.getByLabel(/^Requested/).fill(`${lastWeek}T09:00`);
  await locates.locator('textarea[name=area]').fill('Back yard from the patio to the street');
  for (const utility of ['Power', 'Gas']) await locates.getByRole('checkbox', { name: utility }).check();
  await locates.getByRole('button', { name: 'Record this ticket' }).click();
  await expect(locates.getByText(/Do not dig/).first()).toBeVisible();
  for (const [utility, answer] of [['Power', 'marked'], ['Gas', 'clear']] as const) {
    await locates.getByRole('button', { name: `Record the answer of ${utility}` }).first().click();
    await locates.getByRole('radio', { name: new RegExp(`^${answer}$`, 'i') }).check({ force: true });
    await locates.getByRole('button', { name: 'Record the answer', exact: true }).click();
    await expect(locates.getByRole('button', { name: 'Record the answer', exact: true })).toHaveCount(0);
  }
  await locates.getByRole('button', { name: 'The marks agree with the answers' }).click();
  await expect(locates.locator('.may-dig').first()).toBeVisible();
}
