import { withQuery } from './api-client.ts';

type Query = Parameters<typeof withQuery>[1];

/** The addresses of the app, in one place, as texts for Link and navigate. */
export const addresses = {
  signIn: (back?: string) => withQuery('/sign-in', { back }),
  firstVisit: () => '/first-visit',
  shutdowns: () => '/shutdowns',
  today: (shutdownId: string, query: Query = {}) => withQuery(`/shutdowns/${shutdownId}/today`, query),
  register: (shutdownId: string, query: Query = {}) => withQuery(`/shutdowns/${shutdownId}/register`, query),
  addJoint: (shutdownId: string) => `/shutdowns/${shutdownId}/register/add`,
  importRegister: (shutdownId: string) => `/shutdowns/${shutdownId}/import`,
  areas: (shutdownId: string, query: Query = {}) => withQuery(`/shutdowns/${shutdownId}/areas`, query),
  packs: (shutdownId: string, query: Query = {}) => withQuery(`/shutdowns/${shutdownId}/packs`, query),
  pack: (shutdownId: string, packId: string) => `/shutdowns/${shutdownId}/packs/${packId}`,
  systems: (shutdownId: string) => `/shutdowns/${shutdownId}/systems`,
  permits: (shutdownId: string) => `/shutdowns/${shutdownId}/permits`,
  talks: (shutdownId: string) => `/shutdowns/${shutdownId}/talks`,
  punchItems: (shutdownId: string, query: Query = {}) => withQuery(`/shutdowns/${shutdownId}/punch-items`, query),
  reviews: (shutdownId: string) => `/shutdowns/${shutdownId}/reviews`,
  foundJoints: (shutdownId: string) => `/shutdowns/${shutdownId}/found-joints`,
  blinds: (shutdownId: string, query: Query = {}) => withQuery(`/shutdowns/${shutdownId}/blinds`, query),
  items: (shutdownId: string, query: Query = {}) => withQuery(`/shutdowns/${shutdownId}/items`, query),
  myJoints: (shutdownId: string, query: Query = {}) => withQuery(`/shutdowns/${shutdownId}/my-joints`, query),
  report: (shutdownId: string, query: Query = {}) => withQuery(`/shutdowns/${shutdownId}/report`, query),
  setup: (shutdownId: string, query: Query = {}) => withQuery(`/shutdowns/${shutdownId}/setup`, query),
  joint: (shutdownId: string, jointId: string, query: Query = {}) =>
    withQuery(`/shutdowns/${shutdownId}/joints/${jointId}`, query),
  /** the joint sheet, a PDF of the server */
  sheet: (shutdownId: string, jointId: string, query: Query = {}) =>
    withQuery(`/api/v1/shutdowns/${shutdownId}/joints/${jointId}/sheet.pdf`, query),
  /** other papers, PDFs of the server */
  tag: (shutdownId: string, jointId: string, query: Query = {}) =>
    withQuery(`/api/v1/shutdowns/${shutdownId}/joints/${jointId}/tag.pdf`, query),
  recordForm: (shutdownId: string, jointId: string, query: Query = {}) =>
    withQuery(`/api/v1/shutdowns/${shutdownId}/joints/${jointId}/record-form.pdf`, query),
  testSheet: (shutdownId: string, packId: string, query: Query = {}) =>
    withQuery(`/api/v1/shutdowns/${shutdownId}/packs/${packId}/test-sheet.pdf`, query),
  handOverList: (shutdownId: string, systemId: string) =>
    `/api/v1/shutdowns/${shutdownId}/systems/${systemId}/hand-over-list.pdf`,
  reportPaper: (shutdownId: string) => `/api/v1/shutdowns/${shutdownId}/report.pdf`,
  handOut: (procedureId: string, revision: number) =>
    `/api/v1/procedures/${procedureId}/revisions/${revision}/hand-out.pdf`,
  /** the whole record, lines of JSON of the server */
  record: (shutdownId: string) => `/api/v1/shutdowns/${shutdownId}/record`,
  siteRecord: () => '/api/v1/site/record',
  /** the head of a record, signed, for whoever keeps it; and the key to check it with */
  signedHead: (shutdownId: string) => `/api/v1/shutdowns/${shutdownId}/record/signed-head`,
  siteSignedHead: () => '/api/v1/site/record/signed-head',
  publicKey: () => '/api/v1/record-keys/public.pem',
  editJoint: (shutdownId: string, jointId: string) => `/shutdowns/${shutdownId}/joints/${jointId}/edit`,
  target: (shutdownId: string, jointId: string, query: Query = {}) =>
    withQuery(`/shutdowns/${shutdownId}/joints/${jointId}/target`, query),
  tighten: (shutdownId: string, jointId: string, query: Query = {}) =>
    withQuery(`/shutdowns/${shutdownId}/joints/${jointId}/tighten`, query),
  work: (shutdownId: string, jointId: string, query: Query = {}) =>
    withQuery(`/shutdowns/${shutdownId}/joints/${jointId}/work`, query),
  people: (query: Query = {}) => withQuery('/site/people', query),
  person: (personId: string) => `/site/people/${personId}`,
  tools: (query: Query = {}) => withQuery('/site/tools', query),
  procedures: (query: Query = {}) => withQuery('/site/procedures', query),
  procedure: (procedureId: string, query: Query = {}) => withQuery(`/site/procedures/${procedureId}`, query),
  accounts: () => '/site/accounts',
  server: () => '/site/server',
  data: (query: Query = {}) => withQuery('/site/data', query),
  calculate: (query: Query = {}) => withQuery('/calculate', query),
  simulate: (query: Query = {}) => withQuery('/calculate/simulation', query),
  me: () => '/me',
} as const;
