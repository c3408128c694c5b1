import type { Said } from '@seatwell/contract';
import { useSaid } from '../../app/use-said.ts';
import { useFieldNames } from './use-field-names.ts';

/**
 * What the import says of a cell, the file or the register in the language of the screen: it hands on what the reading,
 * the server and the calculation say.
 */
export function useImportSaid(): (said: Said, field?: string) => string {
  const nameOf = useFieldNames();
  const register = useSaid('register');
  const server = useSaid('problems');
  const calculation = useSaid('calculation');
  return ({ code, message }, field) => {
    const what = field === undefined ? undefined : nameOf(field);
    const known = what === undefined ? {} : { what, what2: what };
    const sayings = [register, server, calculation].map((say) => say({ code, message }, known));
    return sayings.find((said) => said !== message) ?? message;
  };
}
