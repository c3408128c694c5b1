import { refuse } from '../refusal.ts';
import { citation, requiredNumberIn, tableRows, textIn } from '../tables/sourced-table.ts';
import { flangeRating, flangeSize, flangeStandard } from './keys.ts';
import { WELD_NECK_HUBS } from './tables/weld-neck-hubs.ts';

export interface WeldNeckHub {
  readonly pipeOutside_mm: number;
  readonly hubBase_mm: number;
  readonly lengthThroughHub_mm: number;
  readonly flangeThickness_mm: number;
  /** Wall at the weld; a choice of ours by class, the plant's pipe goes first. */
  readonly wall_mm: number;
  readonly wallChoice: string;
  readonly bore_mm: number;
  readonly source: string;
  readonly confidence: string;
}

let hubs: ReadonlyMap<string, WeldNeckHub> | undefined;

function hubRows(): ReadonlyMap<string, WeldNeckHub> {
  hubs ??= new Map(
    tableRows(WELD_NECK_HUBS).map((row) => [
      ['standard', 'size', 'rating'].map((column) => textIn(row, column)).join(' '),
      {
        pipeOutside_mm: requiredNumberIn(row, 'pipeOutside_mm'),
        hubBase_mm: requiredNumberIn(row, 'hubBase_mm'),
        lengthThroughHub_mm: requiredNumberIn(row, 'lengthThroughHub_mm'),
        flangeThickness_mm: requiredNumberIn(row, 'flangeThickness_mm'),
        wall_mm: requiredNumberIn(row, 'wall_mm'),
        wallChoice: textIn(row, 'wallChoice'),
        bore_mm: requiredNumberIn(row, 'bore_mm'),
        source: citation(WELD_NECK_HUBS),
        confidence: WELD_NECK_HUBS.confidence,
      },
    ]),
  );
  return hubs;
}

/**
 * Hub of a weld neck flange.
 * @throws CalcRefusal `hub-not-in-table`, and the key refusals of findFlange
 */
export function weldNeckHub(input: {
  readonly standard: string;
  readonly size: string;
  readonly rating: string;
}): WeldNeckHub {
  const key = `${flangeStandard(input.standard)} ${flangeSize(input.size)} ${flangeRating(input.rating)}`;
  const hub = hubRows().get(key);
  if (hub === undefined) {
    refuse('size', 'hub-not-in-table', `No weld neck hub for ${key} is in the table. Take it from the drawing.`);
  }
  return hub;
}
