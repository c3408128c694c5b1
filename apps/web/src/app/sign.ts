import { useMe } from './session.ts';
import { useTrade } from './use-trade.ts';

/** The signer as a signature prints them: name, and the role that the action takes where they hold it. */
export function useSigner(...rolesThatMay: readonly string[]): { name: string; role: string } {
  const { name, grants } = useMe();
  const trade = useTrade();
  const held = grants.map((grant) => grant.role as string);
  const role = rolesThatMay.find((each) => held.includes(each)) ?? held[0] ?? '';
  return { name, role: role === '' ? '' : trade.word('role', role) };
}
