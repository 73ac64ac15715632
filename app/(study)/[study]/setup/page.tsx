import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadBackups } from '@/lib/features/backup/loaders';
import { takeSettingsFile } from '@/lib/features/setup/actions';
import { loadSetup } from '@/lib/features/setup/loaders';
import { loadWho } from '@/lib/features/study/loaders';
import { formatBytes, formatInstant } from '@/lib/platform/format';
import { BackUpForm, RestoreForm } from './backup-forms';
import { FileForm } from './file-form';
import { InstrumentsSection } from './instruments-section';
import { NameForm } from './name-form';
import { PricesSection } from './prices-section';
import { SettingsForm } from './settings-form';
import { SitesSection } from './sites-section';

export const metadata: Metadata = { title: 'Setup' };

const PARTS = [
  ['tariffs', 'What energy costs at each site'],
  ['settings-file', 'Settings file'],
  ['prices', 'Prices'],
  ['instruments', 'Instruments'],
  ['name', 'Name'],
  ['backup', 'Backup'],
] as const;

/** The assumptions of a study: settings, prices, and the backups of everything. */
export default async function SetupScreen({ params }: { readonly params: Promise<{ study: string }> }) {
  const { study } = await params;
  const setup = await loadSetup(study);
  if (!setup) notFound();
  const who = await loadWho();
  const { folder, backups } = loadBackups();
  return (
    <main id="main" className={sheet.main}>
      <h1>Setup</h1>
      <p className={sheet.soft}>
        What the figures assume. A change stands in the history, and only what it touches is evaluated again. Decimals with a
        point; an emptied field goes back to its usual value. <a href={`/api/studies/${study}/settings`}>Settings as a file</a>{' '}
        for the command line, with the wishes and limits of the plan.
      </p>
      <nav aria-label="Parts of the setup">
        <ul className={sheet.links}>
          {PARTS.map(([id, words]) => (
            <li key={id}>
              <a href={`#${id}`}>{words}</a>
            </li>
          ))}
        </ul>
      </nav>
      <SettingsForm study={study} who={who} groups={setup.groups} />
      <SitesSection study={study} currency={setup.study.settings.currency} sites={setup.tariffs} />
      <section className={sheet.section} aria-labelledby="settings-file">
        <h2 id="settings-file">Take a settings file</h2>
        <p>
          Keys that it does not name go back to their usual values; rates and shares in it are fractions, 0.08 for 8 %. If it has
          the key <code>plan</code>, wishes and limits of the plan become those of the file; if not, they stay as they are.
        </p>
        <FileForm
          id="settings-file"
          study={study}
          who={who}
          label="Settings file (JSON)"
          accept=".json,application/json"
          submit="Take the settings"
          action={takeSettingsFile}
        />
      </section>
      <PricesSection study={study} who={who} currency={setup.study.settings.currency} prices={setup.prices} />
      <InstrumentsSection study={study} who={who} instruments={setup.instruments} />
      <section className={sheet.section} aria-labelledby="name">
        <h2 id="name">Name</h2>
        <NameForm study={study} name={setup.study.name} who={who} />
      </section>
      <section className={sheet.section} aria-labelledby="backup">
        <h2 id="backup">Backup</h2>
        <p>
          One file holds all studies. A restore is tried on the file before it replaces anything, and what is there is backed up
          first.
        </p>
        <BackUpForm />
        {backups.length > 0 && (
          <ul>
            {backups.map((backup) => (
              <li key={backup.name}>
                <a href={`/api/backups/${backup.name}`}>{backup.name}</a> {formatBytes(backup.bytes)}, {formatInstant(backup.at)}
              </li>
            ))}
          </ul>
        )}
        <p className={sheet.soft}>They lie in {folder}.</p>
        <h3>Restore</h3>
        <RestoreForm names={backups.map((backup) => backup.name)} />
      </section>
    </main>
  );
}
