import { useState } from 'react';
import { useText } from '../../texts/text-provider.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { ListSigning } from './list-signing.tsx';
import type { SignRow } from './sign-row.ts';

/** The client's witness point of the tightening. */
export function WitnessSigning({ rows }: { rows: readonly SignRow[] }) {
  const text = useText('signing');
  const [remark, setRemark] = useState('');
  return (
    <>
      <TextField label={text('remark')} optional lines={2} value={remark} onChange={setRemark} />
      <ListSigning
        type="witnessed"
        rows={rows}
        payloadOf={() => ({ point: 'tightening', remark: remark.trim() || null })}
        title={text('title-witness')}
        meaning={text('meaning-witness')}
        label={text('witness-listed')}
        roles={['witness']}
      />
    </>
  );
}
