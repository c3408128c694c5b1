import { useState } from 'react';
import { useFormat } from '../format/format-provider.tsx';
import { Button } from '../ui/button.tsx';
import { Dialog, Sheet } from '../ui/dialog.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { FileDrop } from '../ui/file-drop.tsx';
import { KeyValues } from '../ui/key-values.tsx';
import { Notice } from '../ui/notice.tsx';
import { PageHeader } from '../ui/page-header.tsx';
import { PhotoInput } from '../ui/photo-input.tsx';
import { Problem } from '../ui/problem.tsx';
import { ProgressBar } from '../ui/progress-bar.tsx';
import { SignDialog } from '../ui/sign-dialog.tsx';
import { Skeleton } from '../ui/skeleton.tsx';
import { Tabs } from '../ui/tabs.tsx';
import { useAnnouncer } from '../ui/toast.tsx';
import styles from './gallery.module.css';

const refused = {
  title: 'U41-HX3-07 cannot be released to break',
  detail: 'Two things are missing.',
  errors: [
    {
      code: 'released.permit',
      message: 'No permit or isolation is named.',
      remedy: 'Enter the permit number, or wait until operations has issued it.',
      who: 'operations',
    },
    { code: 'released.signature', message: 'Operations has not signed that the line is isolated.', who: 'K. Nair' },
  ],
};
const items = ['U41-HX3-07', 'U41-HX3-08', 'U41-P1-01', 'U41-P1-02'].map((tag) => ({
  id: tag,
  label: tag,
  detail: 'NPS 12 · 300 · 680 N·m, passes by R. Adeyemi and P. Kowal',
}));

/** Dialogs, refusals, empty and loading states, files, signing. */
export function Asking() {
  const format = useFormat();
  const { toast } = useAnnouncer();
  const [open, setOpen] = useState<'dialog' | 'sheet' | 'sign' | null>(null);
  const [file, setFile] = useState<File>();
  const [photos, setPhotos] = useState<readonly Blob[]>([]);
  const [tab, setTab] = useState('passes');
  const close = () => setOpen(null);
  return (
    <>
      <PageHeader title="Asking, refusing, waiting" over={<a href="#table">Register</a>} />
      <div className={styles.row}>
        <Button onClick={() => setOpen('dialog')}>Open a dialog</Button>
        <Button onClick={() => setOpen('sheet')}>Open a sheet</Button>
        <Button kind="primary" onClick={() => setOpen('sign')}>
          Sign the check
        </Button>
        <Button onClick={() => toast({ message: 'Bolt 6 recorded', action: { label: 'Undo', run: () => undefined } })}>
          Show a message
        </Button>
      </div>
      <div className={styles.even}>
        <Problem problem={refused} />
        <div className={styles.section}>
          <Notice kind="attention" title="Pass 2 was left overnight">
            <p>Check the gap at four points, then repeat pass 2 from bolt 1.</p>
          </Notice>
          <Notice title="14 rows were changed">
            <p>The import kept 46 rows as they were.</p>
          </Notice>
          <ProgressBar label="Pass 2 of 4" valueText="26 of 64 settings done" done={26} total={64} steps={4} />
        </div>
      </div>
      <Tabs
        label="Joint"
        value={tab}
        onChange={setTab}
        tabs={[
          {
            value: 'passes',
            label: 'Passes',
            count: '4',
            content: (
              <KeyValues
                items={[
                  { name: 'Flange', value: 'ASME B16.5 NPS 12 Class 300 RF, weld neck both sides' },
                  { name: 'Gasket', value: 'spiral wound, graphite, 316L; batch 26-0417' },
                  { name: 'Bolts', value: '16 × 1⅛-8 UN × 170 mm, B7 / 2H, new' },
                ]}
              />
            ),
          },
          { value: 'history', label: 'History', content: <Skeleton lines={4} /> },
        ]}
      />
      <div className={styles.even}>
        <FileDrop
          label="Register as a spreadsheet"
          hint="CSV or XLSX, up to 20 MB"
          accept=".csv,.xlsx"
          mostBytes={20_000_000}
          formatSize={format.bytes}
          file={file}
          onFile={setFile}
        />
        <PhotoInput
          label="Photo of the gasket's marking"
          photos={photos}
          onAdd={(added) => setPhotos([...photos, ...added])}
          onRemove={(photo) => setPhotos(photos.filter((each) => each !== photo))}
        />
      </div>
      <EmptyState
        title="No joint is in the register yet"
        actions={<Button kind="primary">Import a spreadsheet</Button>}
      >
        <p>Bring the list that you have: every row is checked, and what does not fit is explained.</p>
      </EmptyState>
      <Dialog
        open={open === 'dialog'}
        onOpenChange={close}
        title="Stop pass 2 after bolt 6?"
        description="The joint stays part tight and stands on the first screen until somebody goes on."
        actions={
          <>
            <Button onClick={close}>Go on</Button>
            <Button kind="primary" onClick={close}>
              Stop here
            </Button>
          </>
        }
      >
        <p>Whoever goes on repeats pass 2 from bolt 1.</p>
      </Dialog>
      <Sheet open={open === 'sheet'} onOpenChange={close} title="U41-HX3-08" description="nipped up, crew D2">
        <KeyValues
          items={[
            { name: 'Flange', value: 'NPS 12 · 300' },
            { name: 'Set', value: format.quantity('torque', 680) },
          ]}
        />
      </Sheet>
      <SignDialog
        open={open === 'sign'}
        onOpenChange={close}
        title="Sign the check of 4 joints"
        meaning="I have checked these joints as QC inspector and found them tight as the procedure demands."
        signer={{ name: 'Jana Brandt', role: 'QC inspector' }}
        items={items}
        signLabel="Sign"
        onSign={close}
      />
    </>
  );
}
