import { describe, expect, test } from 'vitest';
import { isCurrent, navigation } from './navigation.ts';

const lit = (pathname: string) =>
  navigation.filter((entry) => isCurrent(entry, pathname)).map((entry) => entry.key as string);

describe('the entry of the navigation that is lit', () => {
  test.each([
    ['/shutdowns/1/joints/2', 'nav-register'],
    ['/shutdowns/1/joints/2/target', 'nav-register'],
    ['/shutdowns/1/joints/2/work', 'nav-my-joints'],
    ['/shutdowns/1/joints/2/tighten', 'nav-my-joints'],
    ['/shutdowns/1/sign/release', 'nav-my-joints'],
    ['/shutdowns/1/found', 'nav-my-joints'],
    ['/shutdowns/1/found-joints', 'nav-register'],
    ['/shutdowns/1/talk', 'nav-my-joints'],
    ['/calculate/simulation', 'nav-calculate'],
    ['/shutdowns/1/talks', 'nav-people'],
    ['/shutdowns/1/systems/3/hand-over', 'nav-packs'],
  ])('%s belongs to %s alone', (pathname, key) => {
    expect(lit(pathname)).toEqual([key]);
  });

  test('a page outside of it lights none', () => {
    expect(lit('/me')).toEqual([]);
  });
});
