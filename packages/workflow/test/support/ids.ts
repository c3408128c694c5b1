/** A UUIDv7-shaped id that is the same in every run. */
export const uuid = (n: number): string => `00000000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;

export const JOINT = uuid(1);
export const PLACE = uuid(2);
export const MAKE = uuid(3);
export const NEXT_MAKE = uuid(4);
export const AREA = uuid(5);
export const SYSTEM = uuid(6);
export const PACK = uuid(7);
export const CREW = uuid(8);
export const PERMIT = uuid(9);
export const PROCEDURE = uuid(10);
export const TALK = uuid(11);
export const HOLD = uuid(12);
export const LUBRICANT = uuid(13);
export const GASKET_DATA = uuid(14);
export const TABLE = uuid(15);
export const PUNCH = uuid(16);
export const BLIND = uuid(17);

export const ANA = uuid(20);
export const BEN = uuid(21);
export const CARL = uuid(22);
export const INES = uuid(23);
export const EDA = uuid(24);
export const OMAR = uuid(25);
export const WIM = uuid(26);
export const CORA = uuid(27);

export const WRENCH = uuid(30);
export const TEST_GAUGE = uuid(31);
export const HYDRAULIC_WRENCH = uuid(32);
export const PUMP = uuid(33);
export const PUMP_GAUGE = uuid(34);

export const FILE = 'a'.repeat(64);
