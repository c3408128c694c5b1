/** One setting as people know it: the table of these is the usage text, the options and the documented table. */
export interface SettingLine {
  /** without the two dashes; undefined where only the environment sets it */
  readonly flag?: string;
  readonly variable?: string;
  /** what the flag takes; undefined for a switch */
  readonly takes?: string;
  readonly says: string;
  /** in words, when it is not given */
  readonly unless: string;
}

/** Every setting of the server. A flag wins over the environment. */
export const SETTING_LINES = {
  demo: { flag: 'demo', says: 'load the demo shutdown where the database is empty', unless: 'no demo' },
  json: {
    flag: 'json',
    says: 'print one line of JSON on standard output when ready',
    unless: 'a few lines for people',
  },
  help: { flag: 'help', says: 'print the settings and end', unless: 'start' },
  port: {
    flag: 'port',
    variable: 'SEATWELL_PORT',
    takes: 'number',
    says: 'web port; 0 takes any free one',
    unless: '4310 or the next free one',
  },
  host: {
    flag: 'host',
    variable: 'SEATWELL_HOST',
    takes: 'address',
    says: 'address to listen on; beyond this machine only with TLS (or plain-http)',
    unless: '127.0.0.1',
  },
  tlsCert: {
    flag: 'tls-cert',
    variable: 'SEATWELL_TLS_CERT',
    takes: 'file',
    says: 'certificate with its chain, PEM; read again when the file changes',
    unless: 'no TLS',
  },
  tlsKey: {
    flag: 'tls-key',
    variable: 'SEATWELL_TLS_KEY',
    takes: 'file',
    says: 'private key of the certificate, PEM without a passphrase',
    unless: 'no TLS',
  },
  tlsLocal: {
    flag: 'tls-local',
    variable: 'SEATWELL_TLS_LOCAL',
    says: 'TLS with a local authority of this installation, kept in the data folder; devices trust it once (page /trust)',
    unless: 'no TLS',
  },
  tlsNames: {
    flag: 'tls-names',
    variable: 'SEATWELL_TLS_NAMES',
    takes: 'list',
    says: 'further names and addresses, with commas, for the certificate of the local authority',
    unless: 'the names and addresses of the machine',
  },
  redirectPort: {
    flag: 'redirect-port',
    variable: 'SEATWELL_REDIRECT_PORT',
    takes: 'number',
    says: 'http port that only redirects to https and shows how to trust a local authority',
    unless: 'no such port',
  },
  hstsDays: {
    flag: 'hsts-days',
    variable: 'SEATWELL_HSTS_DAYS',
    takes: 'number',
    says: 'days for which browsers insist on https for this name (HSTS); 0: none',
    unless: '30 with a certificate of a public authority, else 0',
  },
  plainHttp: {
    flag: 'plain-http',
    variable: 'SEATWELL_PLAIN_HTTP',
    says: 'allow a host beyond this machine without TLS: only behind a proxy that brings it',
    unless: 'refused',
  },
  trustProxy: {
    flag: 'trust-proxy',
    variable: 'SEATWELL_TRUST_PROXY',
    takes: 'list',
    says: 'proxies whose X-Forwarded headers count: addresses or subnets with commas, or loopback, uniquelocal',
    unless: 'none',
  },
  dataFolder: {
    flag: 'data',
    variable: 'SEATWELL_DATA',
    takes: 'folder',
    says: 'folder of the embedded database, of the local authority and of the key that signs heads of the record',
    unless: '.seatwell',
  },
  cacheFolder: {
    variable: 'SEATWELL_CACHE',
    says: 'folder for PostgreSQL’s binaries where they cannot run from node_modules',
    unless: 'a cache folder of the user',
  },
  databaseUrl: {
    variable: 'DATABASE_URL',
    says: 'PostgreSQL 15 or newer to use, postgresql://…',
    unless: 'the embedded PostgreSQL',
  },
  recordKey: {
    flag: 'record-key',
    variable: 'SEATWELL_RECORD_KEY',
    takes: 'file',
    says: 'Ed25519 key that signs heads of the record, PKCS8 PEM without a passphrase; the same file for every process on a database',
    unless: 'made in the data folder; with DATABASE_URL heads are not signed',
  },
  databaseConnections: {
    variable: 'SEATWELL_DATABASE_CONNECTIONS',
    says: 'database connections of each process, 4 to 200; all replicas together need fewer than max_connections',
    unless: '20',
  },
  drainSeconds: {
    variable: 'SEATWELL_DRAIN_SECONDS',
    says: 'seconds to go on answering after SIGTERM while health says “draining”, for a balancer that asks it',
    unless: '0',
  },
  logLevel: {
    variable: 'LOG_LEVEL',
    says: 'log of requests: fatal, error, warn, info, debug, trace or silent',
    unless: 'info; warn at a terminal',
  },
  metricsToken: {
    variable: 'SEATWELL_METRICS_TOKEN',
    says: 'opens the Prometheus metrics at /metrics to whoever sends it as a bearer token; 16 characters or more',
    unless: 'no metrics',
  },
  backupAt: {
    variable: 'SEATWELL_BACKUP_AT',
    says: 'time of the nightly backup (`npm run nightly`), hours and minutes in UTC',
    unless: '02:00',
  },
  backupsKept: {
    variable: 'SEATWELL_BACKUPS_KEPT',
    says: 'how many nightly backups are kept, 1 to 1000',
    unless: '14',
  },
} as const satisfies Readonly<Record<string, SettingLine>>;

export type SettingName = keyof typeof SETTING_LINES;

const lines: readonly (readonly [string, SettingLine])[] = Object.entries(SETTING_LINES);

/** A setting as an error names it, such as `--port (SEATWELL_PORT)`. */
export function spokenName(name: string): string {
  const line: SettingLine | undefined = lines.find(([key]) => key === name)?.[1];
  if (line?.flag === undefined) return line?.variable ?? name;
  return line.variable === undefined ? `--${line.flag}` : `--${line.flag} (${line.variable})`;
}

const withArgument = (line: SettingLine): string =>
  line.flag === undefined ? '' : `--${line.flag}${line.takes ? ` <${line.takes}>` : ''}`;

/** The options for `parseArgs`. */
export const flagOptions: Readonly<Record<string, { readonly type: 'boolean' | 'string' }>> = Object.fromEntries(
  lines.flatMap(([, { flag, takes }]) => (flag ? [[flag, { type: takes ? 'string' : 'boolean' } as const]] : [])),
);

/** What `--help` prints. */
export const usage = `npm start [-- options]      npm run demo [-- options]

${lines.map(([, line]) => usageLine(line)).join('\n')}

A flag wins over the variable of the environment; switches of the environment are 1 or 0.`;

function usageLine(line: SettingLine): string {
  const names = [withArgument(line), line.variable].filter(Boolean).join('  ');
  return `  ${names}\n      ${line.says} [${line.unless}]`;
}

/** The cells of the documented table, a row per setting: flag, variable, meaning, and what holds without it. */
export const settingRows = (): readonly (readonly string[])[] =>
  lines.map(([, line]) => {
    const code = (text: string | undefined) => (text ? `\`${text}\`` : '');
    return [code(withArgument(line)), code(line.variable), line.says, line.unless];
  });
