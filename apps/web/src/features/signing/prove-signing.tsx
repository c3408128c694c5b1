import type { MyJointRow, ProofWay } from '@seatwell/contract';
import { useText } from '../../texts/text-provider.tsx';
import { ListSigning } from './list-signing.tsx';
import type { SignRow } from './sign-row.ts';

/** Declares joints proven, each in its way and from the readings of its pack. */
export function ProveSigning({ rows, joints }: { rows: readonly SignRow[]; joints: readonly MyJointRow[] }) {
  const text = useText('signing');
  const of = (row: SignRow) => joints.find((joint) => joint.jointId === row.jointId);
  return (
    <ListSigning
      type="proven"
      rows={rows}
      payloadOf={(row) => ({
        way: (of(row)?.waitsFor.data.way as ProofWay | undefined) ?? 'hydrotest',
        packId: of(row)?.packs[0]?.packId ?? null,
        remark: null,
      })}
      title={text('title-prove')}
      meaning={text('meaning-prove')}
      label={text('prove-listed')}
      roles={['inspector']}
    />
  );
}
