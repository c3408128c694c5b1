import { withQuery } from '../../app/api-client.ts';

/** Addresses of the work in the field that no other feature leads to. */
export const fieldAddresses = {
  sign: (shutdownId: string, what: string) => `/shutdowns/${shutdownId}/sign/${what}`,
  foundJoint: (shutdownId: string) => `/shutdowns/${shutdownId}/found`,
  talk: (shutdownId: string, procedureId?: string) =>
    withQuery(`/shutdowns/${shutdownId}/talk`, { procedure: procedureId }),
  packTest: (shutdownId: string, packId: string) => `/shutdowns/${shutdownId}/packs/${packId}/test`,
  handOver: (shutdownId: string, systemId: string) => `/shutdowns/${shutdownId}/systems/${systemId}/hand-over`,
} as const;
