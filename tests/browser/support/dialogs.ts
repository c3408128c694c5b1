import type { Locator, Page } from 'playwright-core';
import { PASSWORD } from '../../api/support/plant.ts';

export const button = (page: Page | Locator, name: string | RegExp): Locator => page.getByRole('button', { name });

/** Chooses from a field in which one searches. */
export async function choose(page: Page | Locator, label: string, typed: string): Promise<void> {
  const field = page.getByRole('combobox', { name: label });
  await field.fill(typed);
  await page
    .getByRole('option', { name: new RegExp(typed) })
    .first()
    .click();
}

/** Fills the open dialog and sends it; waits until it is gone. What it was opened from may stand there again. */
export async function inDialog(
  page: Page,
  send: string | RegExp,
  fill: (dialog: Locator) => Promise<void>,
): Promise<void> {
  const title = await page.getByRole('dialog').getByRole('heading').first().textContent();
  const dialog = page.getByRole('dialog', { name: title ?? '', exact: true });
  await fill(dialog);
  await button(dialog, send).last().click();
  await dialog.waitFor({ state: 'detached' });
}

/** Types the secret again in the open dialog and signs. */
export const sign = (page: Page, label: string | RegExp, secret = PASSWORD): Promise<void> =>
  inDialog(page, label, (dialog) => dialog.getByLabel(/password/i).fill(secret));

/** The day some days from today, as a date field takes it. */
export const day = (from: number): string => new Date(Date.now() + from * 86_400_000).toISOString().slice(0, 10);
