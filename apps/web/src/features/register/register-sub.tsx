import { addresses } from '../../app/addresses.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { useFormat } from '../../format/format-provider.tsx';
import { useText } from '../../texts/text-provider.tsx';
import { Link } from '../../ui/link.tsx';
import type { Register } from './use-register.ts';

/** How long the register is, and the figures of it that lead to their joints. */
export function RegisterSub({ register, filtered }: { register: Register; filtered: boolean }) {
  const text = useText('register');
  const format = useFormat();
  const shutdownId = useShutdownId();
  const { found, registerTotal, withoutTarget, foundJoints } = register;
  if (registerTotal === undefined) return null;
  const figure = (count: number) => ({ count, shown: format.count(count) });
  return (
    <>
      {text('sub-total', figure(registerTotal))}
      {filtered && found && (
        <>
          {' · '}
          <strong>
            {text(found.exact ? 'sub-found' : 'sub-found-at-least', { count: format.count(found.count) })}
          </strong>
        </>
      )}
      {foundJoints !== undefined && foundJoints > 0 && (
        <>
          {' · '}
          <Link href={addresses.register(shutdownId, { found: 'true' })}>
            {text('sub-found-joints', figure(foundJoints))}
          </Link>
        </>
      )}
      {withoutTarget !== undefined && withoutTarget > 0 && (
        <>
          {' · '}
          <Link href={addresses.register(shutdownId, { withoutTarget: 'true' })}>
            {text('sub-without-target', figure(withoutTarget))}
          </Link>
        </>
      )}
    </>
  );
}
