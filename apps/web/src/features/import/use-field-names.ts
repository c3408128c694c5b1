import { REGISTER_FIELDS, type RegisterField } from '@seatwell/workflow';
import { useText } from '../../texts/text-provider.tsx';

const known: ReadonlySet<string> = new Set(REGISTER_FIELDS);

/** Names of the register's fields in words. */
export function useFieldNames(): (field: string) => string {
  const text = useText('import');
  return (field) => (known.has(field) ? text(`field-${field as RegisterField}`) : field);
}
