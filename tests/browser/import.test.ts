import type { RegisterAnswer } from '@seatwell/contract';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BuiltPlant, openBuiltPlant } from './support/built-plant.ts';
import { desk } from './support/gallery.ts';
import { read } from './support/people.ts';
import { sampleRegister } from './support/sample-register.ts';
import { settled, watchedPage } from './support/watched-page.ts';

let plant: BuiltPlant;
let page: Page;
let complaints: string[];

beforeAll(async () => {
  plant = await openBuiltPlant();
  ({ page, complaints } = await watchedPage(await plant.contextOf('coordinator', desk)));
});
afterAll(() => plant?.close());

const xlsx = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const joints = async () => {
  const answer = await read<RegisterAnswer>(page.context(), `${plant.at('/joints')}?limit=300`);
  return answer.rows.map((row) => row.tag);
};

async function choose(name: string, bytes: Uint8Array): Promise<void> {
  await page.locator('input[type=file]').setInputFiles({ name, mimeType: xlsx, buffer: Buffer.from(bytes) });
}

/** Drops the file on the page, as it comes out of a folder's window. */
async function drop(name: string, bytes: Uint8Array): Promise<void> {
  const files = await page.evaluateHandle(
    ({ name, mimeType, base64 }) => {
      const transfer = new DataTransfer();
      const content = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      transfer.items.add(new File([content], name, { type: mimeType }));
      return transfer;
    },
    { name, mimeType: xlsx, base64: Buffer.from(bytes).toString('base64') },
  );
  const target = page.locator('label', { has: page.locator('input[type=file]') });
  await target.dispatchEvent('dragover', { dataTransfer: files });
  await target.dispatchEvent('drop', { dataTransfer: files });
}

async function readSheet(): Promise<void> {
  await page.getByRole('radio', { name: 'Joints' }).check();
  await page.getByRole('button', { name: 'Read this sheet' }).click();
  await page.getByRole('heading', { level: 1, name: /rows in register/ }).waitFor();
}

/** Answers each question with its first choice. @returns how many there were */
async function answerQuestions(): Promise<number> {
  const questions = page.locator('section', { has: page.getByRole('heading', { name: /only you can say/ }) });
  const selects = questions.getByRole('combobox');
  const count = await selects.count();
  for (let each = 0; each < count; each += 1) await selects.nth(each).selectOption({ index: 1 });
  return count;
}

/** The figure that stands over its word, as the top of the preview shows it. */
const figure = async (word: string) =>
  (await page.locator('main').getByText(word, { exact: true }).locator('..').first().textContent())
    ?.replace(word, '')
    .trim();

describe('a coordinator brings the register in from a workbook', () => {
  it('has every bad cell named, by its place and with the reason, and cannot record it', async () => {
    const sample = await sampleRegister();
    await page.goto(plant.at('/import'));
    await settled(page);
    await drop('register-rev-2.xlsx', sample.bytes);
    await page
      .getByRole('heading', { level: 1, name: 'Which sheet of register-rev-2.xlsx is the register?' })
      .waitFor();
    await readSheet();
    for (const { rowNumber, column, written } of sample.planted) {
      const row = page.getByRole('row', { name: new RegExp(`^${column}${rowNumber}\\b`) });
      const words = (await row.first().textContent()) ?? '';
      if (typeof written === 'string') expect(words).toContain(written);
      // Beside place, field, value and meaning stands a reason in words.
      expect(words.length).toBeGreaterThan(60);
    }
    for (const { rowNumbers } of sample.duplicates)
      for (const rowNumber of rowNumbers)
        expect(await page.getByRole('row', { name: new RegExp(`^[A-Z]+${rowNumber}\\b`) }).count()).toBeGreaterThan(0);
    const confirm = page.getByRole('button', { name: /^Import \d+ joints/ });
    expect(await confirm.getAttribute('aria-disabled')).toBe('true');
    expect(await joints()).toEqual([]);
  });

  it('has the corrected file read, with questions that only a person can answer', async () => {
    const sample = await sampleRegister({ corrected: true });
    await page.getByRole('link', { name: 'Another file' }).click();
    await page.getByRole('heading', { level: 1, name: 'Import the register' }).waitFor();
    await choose('register-rev-3.xlsx', sample.bytes);
    await page
      .getByRole('heading', { level: 1, name: 'Which sheet of register-rev-3.xlsx is the register?' })
      .waitFor();
    await readSheet();
    expect(await answerQuestions()).toBe(sample.questions.length);
    await page.getByLabel('Company of new crews').fill('Halden Bolting');
    await page.getByRole('button', { name: 'Read again' }).click();
    const confirm = page.getByRole('button', { name: `Import ${sample.jointCount} joints` });
    await confirm.waitFor();
    await expect.poll(() => confirm.getAttribute('aria-disabled'), { timeout: 15_000 }).toBeNull();
    expect(await figure('in error')).toBe('0');
    expect(await figure('new')).toBe(String(sample.jointCount));
    expect(await joints()).toEqual([]);
  });

  it('is recorded as a whole when confirmed, and stands in the register', async () => {
    const { jointCount } = await sampleRegister({ corrected: true });
    await page.getByRole('button', { name: `Import ${jointCount} joints` }).click();
    await page.getByRole('heading', { level: 1, name: 'register-rev-3.xlsx is in the register' }).waitFor();
    const tags = await joints();
    expect(tags).toHaveLength(jointCount);
    await page.getByRole('link', { name: 'Open the register' }).click();
    await page.getByRole('heading', { level: 1, name: 'Register' }).waitFor();
    await page.getByRole('rowheader', { name: tags[0] ?? '', exact: true }).waitFor();
    expect(await page.getByRole('grid').getAttribute('aria-rowcount')).toBe(String(jointCount + 1));
  });

  it('finds nothing new in the same file, and shows what a later one changes before it is changed', async () => {
    const { bytes, jointCount, questions } = await sampleRegister({ corrected: true });
    await page.goto(plant.at('/import'));
    await choose('register-rev-3.xlsx', bytes);
    await readSheet();
    // The answers of last time stand there, and count for nothing until the person has the file read with them.
    await page.getByText('Answers of last time are filled in').waitFor();
    expect(await page.getByText(/· as last time$/).count()).toBe(questions.length);
    expect(await figure('in error')).not.toBe('0');
    await page.getByRole('button', { name: 'Read again' }).click();
    await expect.poll(() => figure('the same'), { timeout: 15_000 }).toBe(String(jointCount));
    expect(await figure('new')).toBe('0');

    const tags = await joints();
    await page.goto(plant.at('/import'));
    await page.locator('input[type=file]').setInputFiles({
      name: 'line-list.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(`Tag,Remarks\n${tags[0]},scaffold on the north side\n`),
    });
    await page.getByRole('tab', { name: /Differences/ }).waitFor();
    expect(await figure('changed')).toBe('1');
    await page.getByRole('tab', { name: /Differences/ }).click();
    const row = page.getByRole('row', { name: new RegExp(tags[0] ?? '') });
    expect(await row.textContent()).toContain('scaffold on the north side');
  });

  it('shows how far a long import is while it is read and while it is recorded', async () => {
    const rows = Array.from({ length: 6_000 }, (_, index) => `L-${index + 1},Utilities,4",150,B`);
    await page.goto(plant.at('/import'));
    await page.locator('input[type=file]').setInputFiles({
      name: 'long.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(`Tag,Area,Size,Rating,Criticality\n${rows.join('\n')}\n`),
    });
    // A reading can be given up and begun again, and a reload finds it under way.
    const reading = page.getByRole('progressbar', { name: 'long.csv is being read' });
    await reading.waitFor();
    await page.getByRole('button', { name: 'Stop reading' }).click();
    await page.getByRole('button', { name: 'Read again' }).click();
    await reading.waitFor();
    await page.reload();
    await page.getByRole('button', { name: 'Import 6,000 joints' }).click();
    const bar = page.getByRole('progressbar', { name: 'Recording the import' });
    await bar.waitFor();
    expect(await page.getByText(/of 6,000 joints/).count()).toBe(1);
    await page.getByRole('heading', { level: 1, name: 'long.csv is in the register' }).waitFor({ timeout: 60_000 });
    expect(await figure('joints listed')).toBe('6,000');
    expect(complaints).toEqual([]);
  });
});
