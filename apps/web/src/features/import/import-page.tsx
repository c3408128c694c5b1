import { useSuspenseQuery } from '@tanstack/react-query';
import { useSearch } from '@tanstack/react-router';
import { addresses } from '../../app/addresses.ts';
import { useShutdownId } from '../../app/use-shutdown.ts';
import { ChooseFile } from './choose-file.tsx';
import { ChooseSheet } from './choose-sheet.tsx';
import { importQuery } from './import-query.ts';
import { ImportResult } from './import-result.tsx';
import { PreviewPage } from './preview-page.tsx';

/** Where the import stands is in the address, so that a reload or another tab finds it again. */
export const importAddress = (shutdownId: string, importId: string): string =>
  `${addresses.importRegister(shutdownId)}?import=${importId}`;

/** The import of a register: file, sheet, preview, result. */
export function ImportPage() {
  const { import: importId } = useSearch({ strict: false }) as { import?: string };
  return importId === undefined ? <ChooseFile /> : <StartedImport key={importId} importId={importId} />;
}

function StartedImport({ importId }: { importId: string }) {
  const shutdownId = useShutdownId();
  const { data } = useSuspenseQuery(importQuery(shutdownId, importId));
  if (!data.preview) return <ChooseSheet draft={data} />;
  if (data.preview.imported) return <ImportResult preview={data.preview} answer={data.preview.imported} />;
  return <PreviewPage draft={data} preview={data.preview} />;
}
