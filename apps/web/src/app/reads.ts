import type {
  AccountsAnswer,
  AreasAnswer,
  BlindsAnswer,
  ChoicesAnswer,
  CrewsAnswer,
  GasketDataAnswer,
  ItemsAnswer,
  JointPage,
  LubricantsAnswer,
  MakerTorquesAnswer,
  OperatorStatus,
  PackPage,
  PacksAnswer,
  PeopleAnswer,
  PermitsAnswer,
  PersonPage,
  ProceduresAnswer,
  ProgressAnswer,
  PunchItemsAnswer,
  RecordHead,
  ReviewsAnswer,
  ShutdownAnswer,
  SystemsAnswer,
  TalksAnswer,
  TargetTablesAnswer,
  TodayAnswer,
  ToolJointsAnswer,
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
export const todayQuery = (shutdownId: string) => shutdownRead<TodayAnswer>(shutdownId, '/today');
/** The head of the record, signed where the server has a key. */
export const recordHeadQuery = (shutdownId: string) => shutdownRead<RecordHead>(shutdownId, '/record/head');
export const areasQuery = (shutdownId: string) => shutdownRead<AreasAnswer>(shutdownId, '/areas');
export const progressQuery = (shutdownId: string, by: ProgressAnswer['by']) =>
  shutdownRead<ProgressAnswer>(shutdownId, `/progress?by=${by}`);
export const packsQuery = (shutdownId: string) => shutdownRead<PacksAnswer>(shutdownId, '/packs');
export const packQuery = (shutdownId: string, packId: string) => shutdownRead<PackPage>(shutdownId, `/packs/${packId}`);
export const systemsQuery = (shutdownId: string) => shutdownRead<SystemsAnswer>(shutdownId, '/systems');
export const blindsQuery = (shutdownId: string) => shutdownRead<BlindsAnswer>(shutdownId, '/blinds');
export const itemsQuery = (shutdownId: string) => shutdownRead<ItemsAnswer>(shutdownId, '/items');
export const talksQuery = (shutdownId: string) => shutdownRead<TalksAnswer>(shutdownId, '/talks');
export const reviewsQuery = (shutdownId: string) => shutdownRead<ReviewsAnswer>(shutdownId, '/reviews');
export const punchItemsQuery = (shutdownId: string, closed: 'no' | 'yes' | 'any') =>
  shutdownRead<PunchItemsAnswer>(shutdownId, `/punch-items?closed=${closed}`);

export const personQuery = (personId: string) => siteRead<PersonPage>(`/people/${personId}`);
export const peopleQuery = siteRead<PeopleAnswer>('/people');
export const accountsQuery = siteRead<AccountsAnswer>('/accounts');
/** Read again while it is looked at: most of it is no event. */
export const operatorStatusQuery = queryOptions({
  ...siteRead<OperatorStatus>('/operator/status'),
  refetchInterval: 15_000,
});
export const toolsQuery = siteRead<ToolsAnswer>('/tools');
export const toolJointsQuery = (toolId: string) => siteRead<ToolJointsAnswer>(`/tools/${toolId}/joints`);
export const proceduresQuery = siteRead<ProceduresAnswer>('/procedures');
export const gasketDataQuery = siteRead<GasketDataAnswer>('/gasket-data');
export const lubricantsQuery = siteRead<LubricantsAnswer>('/lubricants');
export const makerTorquesQuery = siteRead<MakerTorquesAnswer>('/maker-torques');
export const targetTablesQuery = siteRead<TargetTablesAnswer>('/target-tables');
