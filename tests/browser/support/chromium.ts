import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  createReadStream,
  createWriteStream,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createBrotliDecompress } from 'node:zlib';
import { type Browser, chromium } from 'playwright-core';

/**
 * Starts a headless Chromium. Close it when done.
 * Taken are, in this order: the program named by CHROMIUM_PATH; the Chromium that comes inside an npm package
 * (Linux on x64, glibc); an installed Chrome.
 * @param further arguments of the program
 */
export async function launchChromium(further: readonly string[] = []): Promise<Browser> {
  const own = process.env['CHROMIUM_PATH'];
  if (own !== undefined && own !== '') return launch(own, {}, further);
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    return chromium.launch({ channel: 'chrome', headless: true, args: [...further] });
  }
  const folder = await unpackedFolder();
  return launch(join(folder, 'chromium'), missingParts(folder), further);
}

// Only --no-sandbox: the package's recommended arguments crash with a service worker and switch off web security.
function launch(
  executablePath: string,
  extra: Readonly<Record<string, string>>,
  further: readonly string[],
): Promise<Browser> {
  const inherited = Object.entries(process.env).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, value] as const],
  );
  return chromium.launch({
    executablePath,
    headless: true,
    args: ['--no-sandbox', ...further],
    env: { ...Object.fromEntries(inherited), ...extra },
  });
}

/** Libraries and fonts of the package, where the machine has none of its own. */
function missingParts(folder: string): Record<string, string> {
  const linked = spawnSync('ldd', [join(folder, 'chromium')], { encoding: 'utf8' });
  const lacksLibraries = linked.status !== 0 || linked.stdout.includes('not found');
  const libraries = [join(folder, 'al2023', 'lib'), process.env['LD_LIBRARY_PATH']].filter(Boolean).join(':');
  return {
    ...(lacksLibraries ? { LD_LIBRARY_PATH: libraries } : {}),
    ...(existsSync('/etc/fonts/fonts.conf') ? {} : { FONTCONFIG_PATH: join(folder, 'fonts') }),
  };
}

/** Where the package's browser lies unpacked: one folder per version and user, so that users do not collide. */
async function unpackedFolder(): Promise<string> {
  const packed = packedFolder();
  const { version } = JSON.parse(readFileSync(join(packed, '..', 'package.json'), 'utf8')) as {
    version: string;
  };
  const name = `seatwell-chromium-${version}-${process.getuid?.() ?? 'user'}`;
  // A temp folder may forbid programs (noexec); the checkout then has to do.
  const places = [tmpdir(), join(dirname(packed), '..', '..', '.cache')];
  const failures: string[] = [];
  for (const place of places) {
    const folder = join(place, name);
    try {
      if (!existsSync(folder)) await unpack(packed, folder);
      if (statSync(folder).uid !== (process.getuid?.() ?? statSync(folder).uid)) {
        throw new Error('it belongs to another user');
      }
      const tried = spawnSync(join(folder, 'chromium'), ['--version'], {
        encoding: 'utf8',
        env: { ...process.env, ...missingParts(folder) },
      });
      if (tried.status === 0) return folder;
      failures.push(`${folder}: ${tried.error?.message ?? tried.stderr.trim()}`);
    } catch (error) {
      failures.push(`${folder}: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  throw new Error(
    `No Chromium could be started. Set CHROMIUM_PATH to an installed one. Tried:\n${failures.join('\n')}`,
  );
}

function packedFolder(): string {
  const main = createRequire(import.meta.url).resolve('@sparticuz/chromium');
  return join(main.slice(0, main.lastIndexOf(`${join('@sparticuz', 'chromium')}`)), '@sparticuz', 'chromium', 'bin');
}

// Unpacked beside its final place and renamed, so that two test runs never see half a browser.
async function unpack(packed: string, folder: string): Promise<void> {
  const making = `${folder}.${process.pid}`;
  mkdirSync(making, { recursive: true, mode: 0o700 });
  try {
    await pipeline(
      createReadStream(join(packed, 'chromium.br')),
      createBrotliDecompress(),
      createWriteStream(join(making, 'chromium')),
    );
    chmodSync(join(making, 'chromium'), 0o700);
    await unpackTar(join(packed, 'al2023.tar.br'), join(making, 'al2023'));
    await unpackTar(join(packed, 'fonts.tar.br'), join(making, 'fonts'));
    renameSync(making, folder);
  } catch (error) {
    // Another run may have been first: its folder is as good as ours.
    if (!existsSync(folder)) throw error;
  } finally {
    rmSync(making, { recursive: true, force: true });
  }
}

// Through a file and not a pipe: tar stops reading at the archive's end mark, which breaks the pipe at times.
async function unpackTar(packed: string, folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const archive = join(folder, 'archive.tar');
  await pipeline(createReadStream(packed), createBrotliDecompress(), createWriteStream(archive));
  const tar = spawnSync('tar', ['-x', '--no-same-owner', '-f', archive, '-C', folder], { encoding: 'utf8' });
  rmSync(archive, { force: true });
  if (tar.status !== 0) {
    throw new Error(`tar could not unpack ${packed}: ${tar.error?.message ?? tar.stderr.trim()}`);
  }
}
