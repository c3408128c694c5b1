import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { repositoryRoot } from './repository-root.ts';
import { StartupError } from './startup-error.ts';

export const usage = `npm start [-- options]      npm run demo [-- options]

  --demo            load the demo shutdown where the database is empty
  --json            print one line of JSON on standard output when ready
  --port <number>   web port (SEATWELL_PORT); without it 4310 or the next free one
  --host <address>  address to listen on (SEATWELL_HOST); 127.0.0.1 unless given
  --data <folder>   folder of the embedded database (SEATWELL_DATA); .seatwell unless given

DATABASE_URL selects a PostgreSQL 15 or newer instead of the embedded one.`;

const settingsSchema = z.object({
  demo: z.boolean(),
  json: z.boolean(),
  help: z.boolean(),
  host: z.string().min(1, 'is empty: give an address such as 127.0.0.1'),
  /** Undefined: the usual port or, where that is busy, the next free one. */
  port: z.coerce
    .number('is not a number: give 0 (any free port) to 65535')
    .int('is not a whole number: give 0 (any free port) to 65535')
    .min(0, 'is below 0: give 0 (any free port) to 65535')
    .max(65_535, 'is above 65535: give 0 (any free port) to 65535')
    .optional(),
  dataFolder: z.string().min(1, 'is empty: give a folder'),
  /** Where PostgreSQL's binaries are copied when they cannot run where they are. */
  cacheFolder: z.string().min(1, 'is empty: give a folder').optional(),
  databaseUrl: z
    .string()
    .regex(/^postgres(ql)?:\/\//, 'is no PostgreSQL address: it begins with postgresql://')
    .optional(),
});

export type Settings = Readonly<z.infer<typeof settingsSchema>>;

const spokenNames: Record<string, string> = {
  host: '--host (SEATWELL_HOST)',
  port: '--port (SEATWELL_PORT)',
  dataFolder: '--data (SEATWELL_DATA)',
  cacheFolder: 'SEATWELL_CACHE',
  databaseUrl: 'DATABASE_URL',
};

/**
 * Reads what the person asked for; a flag wins over the environment.
 * @param words the command line after the script's name
 * @throws StartupError with the setting, what is wrong and the remedy; never with a password
 */
export function readSettings(words: readonly string[], environment: NodeJS.ProcessEnv): Settings {
  const flags = parseFlags(words);
  const given = (value: string | undefined) => (value === '' ? undefined : value);
  const dataFolder = flags.data ?? given(environment.SEATWELL_DATA);
  const result = settingsSchema.safeParse({
    demo: flags.demo ?? false,
    json: flags.json ?? false,
    help: flags.help ?? false,
    host: flags.host ?? given(environment.SEATWELL_HOST) ?? '127.0.0.1',
    port: flags.port === '' ? Number.NaN : (flags.port ?? given(environment.SEATWELL_PORT)),
    dataFolder: dataFolder === undefined ? join(repositoryRoot(), '.seatwell') : dataFolder && resolve(dataFolder),
    cacheFolder: given(environment.SEATWELL_CACHE),
    databaseUrl: given(environment.DATABASE_URL),
  });
  if (result.success) return result.data;
  throw new StartupError(
    result.error.issues
      .map(({ path, message }) => `${spokenNames[String(path[0])] ?? path.join('.')} ${message}.`)
      .join('\n'),
  );
}

function parseFlags(words: readonly string[]) {
  try {
    return parseArgs({
      args: [...words],
      options: {
        demo: { type: 'boolean' },
        json: { type: 'boolean' },
        help: { type: 'boolean' },
        host: { type: 'string' },
        port: { type: 'string' },
        data: { type: 'string' },
      },
      strict: true,
      allowPositionals: false,
    }).values;
  } catch (error) {
    throw new StartupError(`${(error as Error).message}\n\n${usage}`);
  }
}
