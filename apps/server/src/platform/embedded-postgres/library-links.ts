import { existsSync, readFileSync, symlinkSync } from 'node:fs';
import { basename, join } from 'node:path';

/**
 * npm packages hold no symbolic links, so the package makes its library links in an install script, which
 * npm 12 blocks: we make them from the same list.
 * @param folder the one that holds bin and lib. One that cannot be written to is left as it is: whether
 *   that matters, the binaries themselves tell.
 */
export function makeLibraryLinks(folder: string): void {
  const list = join(folder, 'pg-symlinks.json');
  if (!existsSync(list)) return;
  const links = JSON.parse(readFileSync(list, 'utf8')) as {
    source: string;
    target: string;
  }[];
  for (const { source, target } of links) {
    try {
      symlinkSync(basename(source), join(folder, target.replace(/^native\//, '')));
    } catch {
      // There already, or not ours to write.
    }
  }
}
