/** Rows that are worked on before other requests get their turn. */
export const ROWS_IN_A_SLICE = 250;

/** Lets everything that waits in the event loop have its turn. */
export const yieldToOthers = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** The parts of a list, one after the other; others get their turn between them. */
export async function* inSlices<T>(list: readonly T[], size = ROWS_IN_A_SLICE): AsyncGenerator<readonly T[]> {
  for (let from = 0; from < list.length; from += size) {
    yield list.slice(from, from + size);
    await yieldToOthers();
  }
}
