import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { NumberHead } from '@/app/_ui/number-head';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadBackups } from '@/lib/features/backup/loaders';
import { takeSettingsFile } from '@/lib/features/setup/actions';
import { loadSetup } from '@/lib/features/setup/loaders';
import { loadWho } from '@/lib/features/study/loaders';
import { formatBytes, formatInstant } from '@/lib/platform/format';
import { BackUpForm, RestoreForm } from './backup-forms';
import { FileForm } from './file-form';
import { DropInstrument, InstrumentForm } from './instrument-forms';
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
          Keys that it does not name go back to their usual values. If it has the key <code>plan</code>, wishes and limits of the
          plan become those of the file; if not, they stay as they are.
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
      <section className={sheet.section} aria-labelledby="instruments">
        <h2 id="instruments">Instruments</h2>
        <p>
          Meters by the name that stands with the readings. A reading that states no error of its meter takes the one given here.
        </p>
        {setup.instruments.length > 0 && (
          <ScrollRegion label="Instruments in use">
            <table className={sheet.table}>
              <thead>
                <tr>
                  <th scope="col">Name</th>
                  <NumberHead name="Voltage" unit="%" />
                  <NumberHead name="Current" unit="%" />
                  <NumberHead name="Power" unit="%" />
                  <NumberHead name="Speed" unit="r/min" />
                  <th scope="col">
                    <span className="unseen">Remove</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {setup.instruments.map((instrument) => (
                  <tr key={instrument.id}>
                    <th scope="row">{instrument.name}</th>
                    <td className={sheet.number}>{instrument.voltagePct ?? 'the study’s'}</td>
                    <td className={sheet.number}>{instrument.currentPct ?? 'the study’s'}</td>
                    <td className={sheet.number}>{instrument.powerPct ?? 'the study’s'}</td>
                    <td className={sheet.number}>{instrument.speedRpm ?? 'the study’s'}</td>
                    <td>
                      <DropInstrument study={study} who={who} instrument={instrument.id} name={instrument.name} />
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollRegion>
        )}
        <InstrumentForm study={study} who={who} />
      </section>
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
