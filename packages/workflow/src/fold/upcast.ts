import { CATALOGUE, isEventType } from '../catalogue.ts';

type Upcaster = (payload: unknown) => unknown;

/** UPCASTERS[type][v] turns a payload of version v into version v + 1. */
const UPCASTERS: Readonly<Record<string, Readonly<Record<number, Upcaster>>>> = {
  // Version 2 may name how the joint is tightened; before, it was by the procedure, as it still is without a name.
  // Version 3 may name the tensioner; a target without it has no pressure, as none had.
  'target-approved': { 1: (payload) => payload, 2: (payload) => payload },
  // Version 2 may give external load, temperatures, test pressure, flange strength and ribs; before, nobody had said.
  'joint-listed': { 1: (payload) => payload },
  'joint-specified': { 1: (payload) => payload },
  'make-planned': { 1: (payload) => payload },
  // Version 2 may give the rotation that the gasket bears; no limit stands for it where it was not given.
  'gasket-data-entered': { 1: (payload) => payload },
  // Version 2 may give a tensioner's hydraulic area; nothing stands for it where it was not given.
  'tool-registered': { 1: (payload) => payload },
  // Version 2 may give the coverage of tensioners; nothing stands for it where it was not given.
  // Version 3 may say what the bolts are; of those before, nothing is known.
  'procedure-drafted': { 1: (payload) => payload, 2: (payload) => payload },
};

/**
 * The payload in the current version of its type.
 * @throws Error when the type is unknown, the version is newer than this release, or a step is missing.
 */
export function upcast(type: string, v: number, payload: unknown): unknown {
  if (!isEventType(type)) throw new Error(`Event type "${type}" is not in the catalogue of this release.`);
  const current = CATALOGUE[type].currentVersion;
  if (!Number.isInteger(v) || v < 1 || v > current)
    throw new Error(
      `Event "${type}" has payload version ${v}; this release reads 1 to ${current}. Update the program.`,
    );
  let result = payload;
  for (let version = v; version < current; version += 1) {
    const step = UPCASTERS[type]?.[version];
    if (!step) throw new Error(`Event "${type}" has no upcaster from version ${version}.`);
    result = step(result);
  }
  return result;
}
