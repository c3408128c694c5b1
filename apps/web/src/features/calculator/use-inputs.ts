import { useSearch } from '@tanstack/react-router';
import { useCallback, useEffect, useRef, useState } from 'react';
import { useGo } from '../../app/use-go.ts';
import { type EnteredTexts, withInputs } from './inputs.ts';

// Browsers allow an address only so many changes in half a minute.
const calm_ms = 400;

/**
 * Inputs that live in the address, so that a link opens them again. The address follows when somebody pauses.
 * @param read takes the inputs out of the address's query
 * @param addressOf the address with the inputs as its query
 */
export function useAddressInputs<Inputs extends EnteredTexts>(
  read: (search: Readonly<Record<string, unknown>>) => Inputs,
  addressOf: (inputs: Inputs) => string,
) {
  const go = useGo();
  const search = useSearch({ strict: false }) as Record<string, unknown>;
  const [inputs, setInputs] = useState(() => read(search));
  const written = useRef(addressOf(inputs));
  const inAddress = addressOf(read(search));

  // biome-ignore lint/correctness/useExhaustiveDependencies: a link of the page itself brings other inputs
  useEffect(() => {
    if (inAddress === written.current) return;
    written.current = inAddress;
    setInputs(read(search));
  }, [inAddress]);

  useEffect(() => {
    const next = addressOf(inputs);
    if (next === written.current) return;
    const timer = setTimeout(() => {
      written.current = next;
      go(next, { replace: true });
    }, calm_ms);
    return () => clearTimeout(timer);
  }, [inputs, addressOf, go]);

  const change = useCallback((change: Inputs) => setInputs((current) => withInputs(current, change)), []);
  return { inputs, change, setInputs };
}
