import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSettings } from '../../apps/server/src/platform/config.ts';
import { settingRows, usage } from '../../apps/server/src/platform/setting-lines.ts';
import { repositoryRoot, sourceFiles } from './support/source-files.ts';

const cells = (line: string): string[] =>
  line
    .split('|')
    .slice(1, -1)
    .map((cell) => cell.trim());

/** The rows of README's table of settings, without its head. */
function documentedRows(): string[][] {
  const text = readFileSync(join(repositoryRoot, 'README.md'), 'utf8');
  const section = text.split('\n## Settings\n')[1]?.split('\n## ')[0] ?? '';
  return section
    .split('\n')
    .filter((line) => line.startsWith('|'))
    .slice(2)
    .map(cells);
}

describe('the settings', () => {
  it('are documented in one table, as the server reads them', () => {
    expect(documentedRows()).toEqual(settingRows());
  });

  it('are all in what --help prints', () => {
    for (const [flag, variable] of settingRows()) {
      for (const name of [flag, variable]) if (name) expect(usage).toContain(name.replaceAll('`', ''));
    }
  });

  it('come from nowhere else: no other file of the server reads a variable of ours', () => {
    const readers = sourceFiles('apps/server/src')
      .filter((file) => /process\.env[.[]['"]?(SEATWELL|DATABASE_URL|LOG_LEVEL)/.test(readFileSync(file, 'utf8')))
      .map(String);
    expect(readers).toEqual([]);
  });

  it.each([
    [['--host', '0.0.0.0'], 'beyond this machine'],
    [['--host', '::'], 'beyond this machine'],
    [['--host', 'plant-server'], 'beyond this machine'],
    [['--tls-cert', 'a.pem'], '--tls-key (SEATWELL_TLS_KEY) is missing'],
    [['--tls-key', 'a.pem'], '--tls-cert (SEATWELL_TLS_CERT) is missing'],
    [['--tls-local', '--tls-cert', 'a', '--tls-key', 'b'], 'choose one'],
    [['--redirect-port', '8080'], 'it needs TLS'],
    [['--redirect-port', '', '--tls-local'], '--redirect-port (SEATWELL_REDIRECT_PORT) is not a number'],
    [['--hsts-days', '9999'], 'is above 730'],
  ])('%s is refused with the remedy', (words, complaint) => {
    expect(() => readSettings(words, {})).toThrow(complaint);
  });

  it.each([
    [['--host', '127.0.0.1']],
    [['--host', '127.8.9.1']],
    [['--host', '::1']],
    [['--host', 'localhost']],
    [['--host', '0.0.0.0', '--tls-local']],
    [['--host', '0.0.0.0', '--tls-cert', 'a.pem', '--tls-key', 'b.pem']],
    [['--host', '0.0.0.0', '--plain-http']],
  ])('%s is taken', (words) => {
    expect(readSettings(words, {}).host).toBe(words[1]);
  });

  it('take a switch of the environment as 1 or 0 and nothing else', () => {
    expect(readSettings([], { SEATWELL_TLS_LOCAL: '1' }).tlsLocal).toBe(true);
    expect(readSettings([], { SEATWELL_TLS_LOCAL: '0' }).tlsLocal).toBe(false);
    expect(() => readSettings([], { SEATWELL_TLS_LOCAL: 'maybe' })).toThrow('is neither 1 (on) nor 0 (off)');
  });
});
