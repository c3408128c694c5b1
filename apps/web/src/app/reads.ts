import type {
  AccountsAnswer,
  ChoicesAnswer,
  CrewsAnswer,
  GasketDataAnswer,
  JointPage,
  LubricantsAnswer,
  MakerTorquesAnswer,
  PeopleAnswer,
  PermitsAnswer,
  ProceduresAnswer,
  ShutdownAnswer,
  TargetTablesAnswer,
  ToolsAnswer,
} from '@seatwell/contract';
import { queryOptions } from '@tanstack/react-query';
import { request } from './api-client.ts';
import { shutdownKey, siteKey } from './query-client.ts';

/** A read of one shutdown: its key begins with the shutdown, so that every recorded event makes it fresh. */
export function shutdownRead<Answer>(shutdownId: string, path: string) {
  return queryOptions({
    queryKey: shutdownKey(shutdownId, path),
    queryFn: ({ signal }) => request<Answer>(`/shutdowns/${shutdownId}${path}`, { signal }),
  });
}

/** A read of the site: people, tools, procedures, engineering data. */
export function siteRead<Answer>(path: string) {
  return queryOptions({
    queryKey: siteKey(path),
    queryFn: ({ signal }) => request<Answer>(path, { signal }),
  });
}

export const shutdownQuery = (shutdownId: string) => shutdownRead<ShutdownAnswer>(shutdownId, '/shutdown');
export const choicesQuery = (shutdownId: string) => shutdownRead<ChoicesAnswer>(shutdownId, '/choices');
export const crewsQuery = (shutdownId: string) => shutdownRead<CrewsAnswer>(shutdownId, '/crews');
export const permitsQuery = (shutdownId: string) => shutdownRead<PermitsAnswer>(shutdownId, '/permits');
export const jointQuery = (shutdownId: string, jointId: string) =>
  shutdownRead<JointPage>(shutdownId, `/joints/${jointId}`);

export const peopleQuery = siteRead<PeopleAnswer>('/people');
export const accountsQuery = siteRead<AccountsAnswer>('/accounts');
export const toolsQuery = siteRead<ToolsAnswer>('/tools');
export const proceduresQuery = siteRead<ProceduresAnswer>('/procedures');
export const gasketDataQuery = siteRead<GasketDataAnswer>('/gasket-data');
export const lubricantsQuery = siteRead<LubricantsAnswer>('/lubricants');
export const makerTorquesQuery = siteRead<MakerTorquesAnswer>('/maker-torques');
export const targetTablesQuery = siteRead<TargetTablesAnswer>('/target-tables');
