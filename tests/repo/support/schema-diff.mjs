// Prisma's own schema engine as WASM: writes the SQL that leads from an empty database to schema.prisma.
// Its interface is internal to Prisma, so it serves development and the repository's own test only.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';

const require = createRequire(import.meta.url);

/** SQL script from an empty database to the given datamodel text. */
export async function sqlFromEmpty(datamodel) {
  const bgPath = require.resolve('@prisma/schema-engine-wasm/schema_engine_bg');
  const bg = await import(pathToFileURL(bgPath).href);
  const wasmPath = bgPath.replace(/\.js$/, '.wasm');
  const module = await WebAssembly.compile(readFileSync(wasmPath));
  const instance = await WebAssembly.instantiate(module, { './schema_engine_bg.js': bg });
  bg.__wbg_set_wasm(instance.exports);
  instance.exports.__wbindgen_start();
  const adapter = bindMigrationAwareSqlAdapterFactory(
    new PrismaPg({ connectionString: process.env.SCHEMA_DIFF_URL ?? 'postgres://nobody@127.0.0.1:1/none' }),
  );
  const files = [['schema.prisma', datamodel]];
  const engine = await bg.SchemaEngine.new({ datamodels: files }, () => {}, adapter);
  const { stdout } = await engine.diff({
    from: { tag: 'empty' },
    to: { tag: 'schemaDatamodel', files: [{ path: 'schema.prisma', content: datamodel }] },
    script: true,
    exitCode: null,
    shadowDatabaseUrl: null,
    filters: { externalTables: [], externalEnums: [] },
  });
  return stdout;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  console.log(await sqlFromEmpty(readFileSync(new URL('../../../prisma/schema.prisma', import.meta.url), 'utf8')));
}
