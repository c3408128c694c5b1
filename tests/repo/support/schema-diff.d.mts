/** SQL script from an empty database to the given datamodel text. */
export function sqlFromEmpty(datamodel: string): Promise<string>;
