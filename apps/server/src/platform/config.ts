import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { beyondThisMachine } from './listening-address.ts';
import { repositoryRoot } from './repository-root.ts';
import { flagOptions, SETTING_LINES, type SettingLine, type SettingName, spokenName, usage } from './setting-lines.ts';
import { StartupError } from './startup-error.ts';

export { usage } from './setting-lines.ts';

const number = (least: number, most: number, what: string) =>
  z.coerce
    .number(`is not a number: give ${what}`)
    .int(`is not a whole number: give ${what}`)
    .min(least, `is below ${least}: give ${what}`)
    .max(most, `is above ${most}: give ${what}`);

const port = number(0, 65_535, '0 (any free port) to 65535');
const file = z.string().min(1, 'is empty: give a file');
const folder = z.string().min(1, 'is empty: give a folder');
const isSwitch = z
  .enum(['0', '1'], 'is neither 1 (on) nor 0 (off)')
  .optional()
  .transform((value) => value === '1');
const list = z
  .string()
  .optional()
  .transform((text) => (text ?? '').split(',').flatMap((word) => word.trim() || []));

const settingsSchema = z
  .object({
    demo: isSwitch,
    json: isSwitch,
    help: isSwitch,
    host: z.string('is missing: give an address').min(1, 'is empty: give an address such as 127.0.0.1'),
    /** Undefined: the usual port or, where that is busy, the next free one. */
    port: port.optional(),
    tlsCert: file.optional(),
    tlsKey: file.optional(),
    tlsLocal: isSwitch,
    tlsNames: list,
    redirectPort: port.optional(),
    /** Undefined: as the certificate's authority makes it safe. */
    hstsDays: number(0, 730, 'days from 0 to 730').optional(),
    plainHttp: isSwitch,
    trustProxy: list,
    dataFolder: folder,
    /** Where PostgreSQL's binaries are copied when they cannot run where they are. */
    cacheFolder: folder.optional(),
    databaseUrl: z
      .string()
      .regex(/^postgres(ql)?:\/\//, 'is no PostgreSQL address: it begins with postgresql://')
      .optional(),
    /** Undefined: one in the data folder beside the embedded database, and none with a database of one's own. */
    recordKey: file.transform((path) => resolve(path)).optional(),
    databaseConnections: number(4, 200, 'connections from 4 to 200').default(20),
    drainSeconds: number(0, 300, 'seconds from 0 to 300').default(0),
    logLevel: z
      .enum(['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'], 'is no level: give warn or info')
      // A person at a terminal reads what is wrong; a collector wants each request.
      .default(process.stderr.isTTY ? 'warn' : 'info'),
    metricsToken: z.string().min(16, 'is shorter than 16 characters: give a longer one at random').optional(),
    backupAt: z
      .string()
      .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'is no time: give hours and minutes in UTC such as 02:00')
      .default('02:00'),
    backupsKept: number(1, 1000, 'files from 1 to 1000').default(14),
  } satisfies Record<SettingName, z.ZodType>)
  .superRefine((settings, context) => {
    const { tlsCert, tlsKey, tlsLocal, redirectPort, host, plainHttp, help } = settings;
    const refuse = (path: SettingName, message: string) => context.addIssue({ code: 'custom', path: [path], message });
    const tls = tlsLocal || tlsCert !== undefined || tlsKey !== undefined;
    if (tlsCert !== undefined && tlsKey === undefined) refuse('tlsKey', 'is missing: a certificate needs its key');
    if (tlsKey !== undefined && tlsCert === undefined) refuse('tlsCert', 'is missing: a key needs its certificate');
    if (tlsLocal && (tlsCert ?? tlsKey) !== undefined) {
      refuse('tlsLocal', 'and a certificate of your own are both given: choose one');
    }
    if (redirectPort !== undefined && !tls) refuse('redirectPort', 'redirects to https: it needs TLS, see --help');
    if (beyondThisMachine(host) && !tls && !plainHttp && !help) {
      refuse(
        'host',
        `is ${host}, beyond this machine, and without TLS secrets would cross the network readable: add --tls-local, or --tls-cert and --tls-key, or --plain-http behind a proxy that brings TLS`,
      );
    }
  });

export type Settings = Readonly<z.infer<typeof settingsSchema>>;

/**
 * Reads what the person asked for; a flag wins over the environment.
 * @param words the command line after the script's name
 * @throws StartupError with the setting, what is wrong and the remedy; never with a password
 */
export function readSettings(words: readonly string[], environment: NodeJS.ProcessEnv): Settings {
  const flags = parseFlags(words);
  const given: Record<string, unknown> = {};
  for (const [name, line] of Object.entries(SETTING_LINES) as [SettingName, SettingLine][]) {
    const flag = line.flag === undefined ? undefined : flags[line.flag];
    const variable = line.variable === undefined ? undefined : environment[line.variable] || undefined;
    given[name] = flag === undefined ? variable : flag === true ? '1' : flag;
    // An empty word would be taken for 0.
    if (flag === '' && line.takes === 'number') given[name] = Number.NaN;
  }
  const { host = '127.0.0.1', dataFolder = join(repositoryRoot(), '.seatwell') } = given;
  const result = settingsSchema.safeParse({
    ...given,
    host,
    dataFolder: dataFolder && resolve(String(dataFolder)),
  });
  if (result.success) return result.data;
  throw new StartupError(
    result.error.issues.map(({ path, message }) => `${spokenName(path.join('.'))} ${message}.`).join('\n'),
  );
}

function parseFlags(words: readonly string[]): Readonly<Record<string, string | boolean | undefined>> {
  try {
    const { values } = parseArgs({ args: [...words], options: flagOptions, strict: true, allowPositionals: false });
    return values as Record<string, string | boolean | undefined>;
  } catch (error) {
    throw new StartupError(`${(error as Error).message}\n\n${usage}`);
  }
}
