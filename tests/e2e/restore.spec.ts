import { expect, test } from './page-watch';
import { plantStudy } from './support-fleet';

test('a backup is made from the screen, and restored in place of all studies', { tag: '@alone' }, async ({ page }) => {
  const study = await plantStudy('Backup', 1, { evaluated: false });
  await page.goto(`/${study}/setup`);
  await page.getByRole('button', { name: 'Back up now' }).click();
  await expect(page.getByText(/Backed up as lossbook-.*\.db, and the copy was checked/)).toBeVisible();
  await page.getByRole('button', { name: 'Restore' }).click();
  await expect(page.getByText('Tick the box to say that the current data may be replaced.')).toBeVisible();
  await page.getByLabel('All studies are replaced by those of the backup.').check();
  await page.getByRole('button', { name: 'Restore' }).click();
  await expect(
    page.getByText(/Restored\. A copy of the backup was opened, checked .* and counted first: \d+ stud/),
  ).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Setup' })).toBeVisible();
});
