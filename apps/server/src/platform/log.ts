/** What a line of the log may carry besides its text. */
export type LogFields = Readonly<Record<string, unknown>>;

export interface Log {
  info(message: string, fields?: LogFields): void;
  warn(message: string, fields?: LogFields): void;
  error(message: string, fields?: LogFields): void;
}

const levels = { info: 30, warn: 40, error: 50 } as const;

/**
 * The log of the server: text for a person at a terminal, else one JSON object a line in the form that
 * Fastify's own log has (`level`, `time`, `msg`), so that both can go to one collector.
 * @param write receives complete lines; standard error unless given, so that `--json` keeps standard
 *   output for its one line
 */
export function createLog(
  write: (line: string) => void = (line) => process.stderr.write(line),
  readable: boolean = process.stderr.isTTY === true,
): Log {
  const line = (level: keyof typeof levels, message: string, fields: LogFields = {}) => {
    if (!readable) {
      write(`${JSON.stringify({ level: levels[level], time: Date.now(), ...fields, msg: message })}\n`);
      return;
    }
    const prefix = level === 'info' ? '' : `${level}: `;
    const details = Object.keys(fields).length > 0 ? ` ${JSON.stringify(fields)}` : '';
    write(`${prefix}${message}${details}\n`);
  };
  return {
    info: (message, fields) => line('info', message, fields),
    warn: (message, fields) => line('warn', message, fields),
    error: (message, fields) => line('error', message, fields),
  };
}
