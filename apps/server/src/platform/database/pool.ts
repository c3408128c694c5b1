import pg from 'pg';

const DATE = 1082;
const INT8 = 20;

/** A pool whose days stay text (a day has no zone) and whose counts are numbers. */
export function createPool(
  url: string,
  options: {
    readonly size: number;
    readonly role?: string | undefined;
    /** false: a commit need not reach the disk before it is answered; for loading what can be loaded again */
    readonly durable?: boolean;
  },
): pg.Pool {
  const pool = new pg.Pool({
    connectionString: url,
    max: options.size,
    connectionTimeoutMillis: 10_000,
    idleTimeoutMillis: 30_000,
    statement_timeout: 60_000,
    application_name: 'seatwell',
    // One log-in for owner and app: each connection gives up the owner's rights before it is used.
    options: [
      ...(options.role ? [`-c role=${options.role}`] : []),
      ...(options.durable === false ? ['-c synchronous_commit=off'] : []),
    ].join(' '),
    types: {
      getTypeParser: ((oid: number, format?: 'text' | 'binary') => {
        if (oid === DATE) return (text: string) => text;
        if (oid === INT8) return Number;
        return pg.types.getTypeParser(oid, format as 'text');
      }) as typeof pg.types.getTypeParser,
    },
  });
  // An idle connection that breaks is replaced; a broken one in use fails the query that used it.
  pool.on('error', () => {});
  pool.on('connect', (client) => client.on('error', () => {}));
  return pool;
}

export type Database = pg.Pool;
export type Transaction = pg.PoolClient;

/** Runs work in one READ COMMITTED transaction; any error rolls everything back. */
export async function inTransaction<T>(pool: Database, work: (tx: Transaction) => Promise<T>): Promise<T> {
  const tx = await pool.connect();
  let broken: Error | undefined;
  try {
    await tx.query('BEGIN');
    const result = await work(tx);
    await tx.query('COMMIT');
    return result;
  } catch (error) {
    await tx.query('ROLLBACK').catch((cause: Error) => {
      broken = cause;
    });
    throw error;
  } finally {
    tx.release(broken);
  }
}
