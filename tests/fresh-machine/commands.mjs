// Starts commands as a person on a machine of their own would, and looks at what they leave.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readlinkSync } from 'node:fs';

/** What people paste: the commands that README shows under "Run it". */
export function commandsOf(readme) {
  const section = readme.split('\n## Run it\n')[1]?.split('\n## ')[0] ?? '';
  const [start, test, ...more] = [...section.matchAll(/```sh\n([^`]+)\n```/g)].map((match) => match[1].trim());
  if (!start || !test || more.length > 0) throw new Error('README no longer shows two commands under “Run it”.');
  return { start, test };
}

/** A machine's bare environment: no LANG, no settings of ours, only what finds programs and the network. */
export function bareEnvironment(home, cache) {
  const kept = ['PATH', 'NODE_EXTRA_CA_CERTS', 'HTTP_PROXY', 'HTTPS_PROXY', 'NO_PROXY', 'CHROMIUM_PATH'];
  const found = kept.filter((name) => process.env[name]).map((name) => [name, process.env[name]]);
  return {
    ...Object.fromEntries(found),
    HOME: home,
    npm_config_cache: cache,
    // What a first `npm ci` on this machine has loaded need not be loaded again.
    npm_config_prefer_offline: 'true',
    npm_config_update_notifier: 'false',
  };
}

/** Runs a line of a shell in a process group of its own, as a terminal does. */
export function shell(line, { user, folder, env }) {
  const child = spawn('sh', ['-c', line], {
    cwd: folder,
    env,
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
    ...user,
  });
  const said = { out: '', all: '' };
  child.stdout.on('data', (part) => {
    said.out += part;
    said.all += part;
  });
  child.stderr.on('data', (part) => {
    said.all += part;
  });
  let ended = false;
  const end = once(child, 'close').then(([code, signal]) => {
    ended = true;
    return { code, signal };
  });
  return {
    said,
    end,
    /** Waits for words on standard output; the command's end without them is an error. */
    async until(words) {
      while (!words.test(said.out)) {
        if (ended) throw new Error(`“${line}” ended without “${words.source}”:\n${said.all.slice(-6000)}`);
        await Promise.race([end, once(child.stdout, 'data')]);
      }
      return words.exec(said.out);
    },
    /** Ctrl-C: the terminal gives it to the whole group. */
    interrupt: () => process.kill(-child.pid, 'SIGINT'),
    kill: () => {
      if (!ended) process.kill(-child.pid, 'SIGKILL');
    },
  };
}

/** Processes that still have their working folder in there. */
export function processesIn(folder) {
  return readdirSync('/proc').filter((pid) => {
    if (!/^\d+$/.test(pid)) return false;
    try {
      return readlinkSync(`/proc/${pid}/cwd`).startsWith(folder);
    } catch {
      return false;
    }
  });
}
