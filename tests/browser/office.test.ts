import type { JointPage, PersonPage } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accepted, command, PASSWORD, siteCommand } from '../api/support/plant.ts';
import { type ListedJoint, listJoint } from '../api/support/shutdown.ts';
import { holdTalk } from '../api/support/talk.ts';
import { engineer, openAndNipUp, release, tighten } from '../api/support/work.ts';
import { type BuiltPlant, openBuiltPlant } from './support/built-plant.ts';
import { button, choose, day, inDialog, sign } from './support/dialogs.ts';
import { desk, phone } from './support/gallery.ts';
import { read } from './support/people.ts';
import { picture } from './support/running-plant.ts';
import { openPage } from './support/watched-page.ts';

let plant: BuiltPlant;
let tightened: ListedJoint;
beforeAll(async () => {
  plant = await openBuiltPlant();
  const { shutdown } = plant;
  await holdTalk(shutdown);
  tightened = await listJoint(shutdown);
  await engineer(shutdown, tightened);
  await release(shutdown, tightened);
  await openAndNipUp(shutdown, tightened);
  await tighten(shutdown, tightened);
});
afterAll(() => plant?.close());

/** A page of a role's account, with what it complained about. */
const pageOf = async (role: string, size: typeof desk, address: string) =>
  openPage(await plant.contextOf(role, size), address);

describe('accounts and people', () => {
  it('a deputy is named for days, a role ends, an account is closed', async () => {
    const { page, complaints } = await pageOf('administrator', desk, '/site/accounts');
    const account = async (name: string) => {
      await button(page, `Change the account of ${name}`).click();
      await page.getByRole('dialog', { name }).waitFor();
    };
    await account('Ina Spector');
    await button(page, 'Name a deputy').click();
    await inDialog(page, 'Name a deputy', async (dialog) => {
      await choose(dialog, 'Deputy', 'Chas Hand');
      await dialog.getByLabel('From').fill(day(0));
      await dialog.getByLabel('Until').fill(day(7));
      await picture(page, 'deputy');
    });
    await page.keyboard.press('Escape');
    const deputy = page.getByRole('row').filter({ hasText: 'Chas Hand' });
    await deputy.getByText(/QC inspector/).waitFor();
    await picture(page, 'accounts-deputy');
    // The deputy's grant is a role of its own, and ends like one.
    await account('Chas Hand');
    await button(page, 'End the role QC inspector of Chas Hand').click();
    await inDialog(page, 'End', (dialog) => dialog.getByLabel('Reason').fill('Back from leave'));
    await page.keyboard.press('Escape');
    await expect.poll(() => deputy.getByText(/QC inspector/).count()).toBe(0);
    await account('Will Itness');
    await button(page, 'Close the account').click();
    await inDialog(page, 'Close the account', (dialog) => dialog.getByLabel('Reason').fill('Left the site'));
    await page.keyboard.press('Escape');
    await page
      .getByRole('row')
      .filter({ hasText: 'Will Itness' })
      .getByText(/closed/)
      .waitFor();
    await picture(page, 'accounts-closed');
    expect(complaints).toEqual([]);
    const answer = await page.context().request.post('/api/v1/session', {
      data: { email: plant.shutdown.witness.email, password: PASSWORD },
    });
    expect(answer.status()).toBe(401);
    await page.context().close();
  });

  it('a name is erased, and the work stays without it', async () => {
    const { personId } = plant.shutdown.witness;
    const { page, complaints } = await pageOf('administrator', phone, `/site/people/${personId}`);
    await button(page, 'Erase the name').click();
    await inDialog(page, 'Erase the name', async (dialog) => {
      await dialog.getByLabel('Reason').fill('Asked for by the person');
      await picture(page, 'erase');
    });
    await page.getByRole('heading', { level: 1, name: 'name erased' }).waitFor();
    await picture(page, 'erased');
    expect((await read<PersonPage>(page.context(), `/people/${personId}`)).name).toBeNull();
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe('tools', () => {
  const calibration = { toolId: '', tag: 'TW-9', calibrationId: uuidv7() };
  beforeAll(async () => {
    const { shutdown } = plant;
    calibration.toolId = uuidv7();
    accepted(
      await siteCommand(shutdown.plant, shutdown.inspector, 'tool-registered', calibration.toolId, {
        toolId: calibration.toolId,
        tag: calibration.tag,
        kind: 'torque-wrench',
        maker: 'Example',
        scaleMinimum: 50,
        scaleMaximum: 400,
        scaleUnit: 'N·m',
        scaleDivision: null,
      }),
    );
  });

  it('a provisional certificate is recorded with its photo and cleared', async () => {
    const { page, complaints } = await pageOf('inspector', phone, '/site/tools?find=TW-9');
    await button(page, 'Open TW-9').click();
    await button(page, 'Record a calibration').click();
    await inDialog(page, 'Save', async (dialog) => {
      await dialog.getByLabel('Certificate number').fill('C-9');
      await dialog.getByLabel('Calibrated on').fill(day(-10));
      await dialog.getByLabel('Valid through').fill(day(200));
      await dialog.getByLabel(/Provisional, from/).check();
      await dialog.locator('input[type=file]').setInputFiles({
        name: 'certificate.png',
        mimeType: 'image/png',
        buffer: await page.screenshot(),
      });
      await dialog
        .getByText(/certificate\.png|stored|kept/i)
        .first()
        .waitFor();
      await picture(page, 'calibration');
    });
    await button(page, 'Clear the provisional certificate C-9').click();
    await page
      .getByText(/^cleared /)
      .first()
      .waitFor();
    await picture(page, 'cleared');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('a wrench found wrong puts its joints up for review', async () => {
    const { page, complaints } = await pageOf('inspector', desk, '/site/tools?find=TW-1');
    await button(page, 'Open TW-1').click();
    await button(page, 'Found wrong').click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Found on').fill(day(0));
    await dialog.getByLabel('What was wrong').fill('Reads 12 % low');
    await button(dialog, 'Go on to signing').click();
    await picture(page, 'tool-failed');
    await sign(page, 'Sign the report');
    const sheet = page.getByRole('dialog', { name: 'TW-1' });
    await sheet.getByText('found wrong', { exact: true }).waitFor();
    await picture(page, 'tool-failed-sheet');
    await sheet.getByRole('link', { name: tightened.tag }).click();
    await page.getByRole('heading', { level: 1, name: tightened.tag }).waitFor();
    await page.getByText(/tightened with a tool found wrong: TW-1/).waitFor();
    await picture(page, 'tool-failed-joint');
    const { makes } = await read<JointPage>(
      page.context(),
      `/shutdowns/${plant.shutdown.shutdownId}/joints/${tightened.jointId}`,
    );
    expect(makes[0]?.flags.map((flag) => flag.code)).toContain('tool-failed');
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe('permits and blinds', () => {
  it('a permit is withdrawn, and its joints are not opened on it', async () => {
    const joint = await listJoint(plant.shutdown);
    await engineer(plant.shutdown, joint);
    await release(plant.shutdown, joint);
    const { page, complaints } = await pageOf('operations', phone, plant.at('/permits'));
    const row = page
      .getByRole('row')
      .filter({ hasText: joint.tag })
      .or(page.getByRole('listitem').filter({ hasText: joint.tag }))
      .first();
    await button(row, /^Withdraw permit/).click();
    await inDialog(page, 'Withdraw', async (dialog) => {
      await dialog.getByLabel('Reason').fill('Work beside it');
      await picture(page, 'withdraw');
    });
    await page
      .getByText(/^withdrawn /)
      .first()
      .waitFor();
    await picture(page, 'withdrawn');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('a spectacle blind is turned closed and open again', async () => {
    const { shutdown } = plant;
    const blindId = uuidv7();
    accepted(
      await command(shutdown.plant, shutdown.coordinator, shutdown.shutdownId, 'blind-planned', blindId, {
        blindId,
        number: 'SB-7',
        type: 'spectacle',
        purpose: 'isolation',
        rating: '300',
        thickness_mm: 20,
        owner: 'Operations',
        jointId: tightened.jointId,
        packId: null,
        outBy: null,
      } as never),
    );
    const { page, complaints } = await pageOf('technician', phone, plant.at('/blinds'));
    for (const position of ['closed', 'open']) {
      await button(page, 'Spectacle blind SB-7 is turned').click();
      await inDialog(page, 'Record turned', async (dialog) => {
        await dialog.getByLabel(new RegExp(`^${position}`)).check();
        await picture(page, `spectacle-${position}`);
      });
      await page.getByText(position, { exact: true }).first().waitFor();
    }
    await picture(page, 'blinds');
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe('what joints hold, and the site', () => {
  it('a valve is registered at its joint, goes to the workshop, and the joint page says so', async () => {
    const { page, complaints } = await pageOf('technician', phone, plant.at('/items'));
    await button(page, 'Register an item').click();
    await inDialog(page, 'Register an item', async (dialog) => {
      await dialog.getByLabel('Tag').fill('FV-4101');
      await dialog.getByLabel('Kind').selectOption({ label: 'control valve' });
      await choose(dialog, 'First joint', tightened.tag);
      await picture(page, 'register-item');
    });
    await page.getByRole('heading', { level: 1, name: 'No item is away from its joints' }).waitFor();
    await button(page, 'Record where FV-4101 went').click();
    await inDialog(page, 'Moved', (dialog) => dialog.getByLabel('in the workshop').check());
    await page.getByRole('heading', { level: 1, name: '1 of 1 items is away' }).waitFor();
    await picture(page, 'items');
    await page.goto(plant.at(`/joints/${tightened.jointId}`));
    await page.getByText('control valve · in the workshop').waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('the administrator changes the name of the site', async () => {
    const { page, complaints } = await pageOf('administrator', desk, '/site/server');
    await button(page, 'Change the site').click();
    await inDialog(page, 'Save', async (dialog) => {
      await dialog.getByLabel(/name/i).first().fill('Riverside Works');
      await picture(page, 'change-site');
    });
    await page.getByText('Riverside Works').first().waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});
