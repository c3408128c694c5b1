import type { Me } from '@seatwell/contract';
import type { Browser, BrowserContext, BrowserContextOptions } from 'playwright-core';
import type { LaunchedServer } from './launched-server.ts';

type Cookies = Awaited<ReturnType<BrowserContext['storageState']>>;

/** The demo's people, signed in without the sign-in page: each once, since sign-ins are counted. */
export interface People {
  /** a browser context in which the first account of a role is signed in */
  readonly contextOf: (role: string, options?: BrowserContextOptions) => Promise<BrowserContext>;
  readonly accountOf: (role: string) => LaunchedServer['accounts'][number];
}

export function peopleOf(browser: Browser, server: Pick<LaunchedServer, 'url' | 'accounts'>): People {
  const sessions = new Map<string, Cookies>();
  const accountOf: People['accountOf'] = (role) => {
    const account = server.accounts.find((each) => each.role === role);
    if (!account) throw new Error(`The demo has no account for the role ${role}.`);
    return account;
  };
  const contextOf: People['contextOf'] = async (role, options = {}) => {
    const known = sessions.get(role);
    const context = await browser.newContext({
      baseURL: server.url,
      ...options,
      ...(known ? { storageState: known } : {}),
    });
    context.setDefaultTimeout(20_000);
    if (!known) {
      const { email, password } = accountOf(role);
      const answer = await context.request.post('/api/v1/session', { data: { email, password } });
      if (!answer.ok()) throw new Error(`${email} was not let in: ${answer.status()} ${await answer.text()}`);
      sessions.set(role, await context.storageState());
    }
    return context;
  };
  return { contextOf, accountOf };
}

/** Reads the API as the person of a context. */
export async function read<Answer>(context: BrowserContext, path: string): Promise<Answer> {
  const answer = await context.request.get(`/api/v1${path}`);
  if (!answer.ok()) throw new Error(`${path} answered ${answer.status()}: ${await answer.text()}`);
  return (await answer.json()) as Answer;
}

/** The shutdown that the demo plays in. */
export async function demoShutdownId(context: BrowserContext): Promise<string> {
  const { shutdowns } = await read<Me>(context, '/session');
  if (!shutdowns[0]) throw new Error('The demo has no shutdown.');
  return shutdowns[0].shutdownId;
}
